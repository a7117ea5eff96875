import { useBook } from '../../book.ts';
import { Sentence } from '../../parts/sentence.tsx';

/** What has been shared out of a pool so far, each opening its record. */
export function EarlierShareOuts(props: { readonly ids: readonly string[] }) {
  const { standing } = useBook().ledger;
  return (
    <ul class="record-list">
      {props.ids.map((id) => (
        <li key={id}>
          <Sentence record={standing.get(id)} />
        </li>
      ))}
    </ul>
  );
}
