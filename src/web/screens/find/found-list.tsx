import { dayOf, type FoundRecord } from '../../../questions/find-records.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Sentence } from '../../parts/sentence.tsx';
import { say } from '../../say.ts';

/** Found records as sentences, with a way to edit each where it is found. */
export function FoundList({ found }: { readonly found: readonly FoundRecord[] }) {
  const { ledger } = useBook();
  return (
    <ol class="roll-lines">
      {found.map(({ record, state }, place) => {
        const above = found[place - 1];
        const same = above !== undefined && dayOf(above.record) === dayOf(record);
        return (
          <li key={record.id} class={state === 'counts' ? 'roll-line' : 'roll-line roll-gone'}>
            <span class={same ? 'roll-day roll-day-same' : 'roll-day'}>
              {say.day(dayOf(record))}
            </span>
            <span class="roll-words">
              <Sentence record={record} />
              {state !== 'counts' && <span> ({state})</span>}
            </span>
            {state === 'counts' && record.kind !== 'void' && (
              <a
                class="roll-verb"
                href={`/records/${record.id}/edit`}
                aria-label={say`Edit: ${recordSentence(record, ledger, say)}`}
              >
                {say`Edit`}
              </a>
            )}
          </li>
        );
      })}
    </ol>
  );
}
