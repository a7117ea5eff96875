import type { LineLanguage } from '../../intake/one-line/line-words.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { type LineExample, lineExamples } from './line-example-list.ts';

/** Lines to begin with, over the names of this book; tapping one writes it. */
export function LineExamples(props: { readonly onWrite: (line: string) => void }) {
  const book = useBook();
  const { sellers, products } = book.ledger.setup;
  const [seller, other] = sellers.keys();
  const [product] = products.keys();
  if (seller === undefined || product === undefined) {
    return <p class="none">{say`Add sellers and products in set-up first.`}</p>;
  }
  const names = { seller, other: other ?? seller, product };
  return (
    <section class="line-examples" aria-labelledby="line-examples">
      <h3 id="line-examples">{say`For example`}</h3>
      <ul>
        {lineExamples.map((example) => (
          <li key={example.en}>
            <Example example={example} language="en" names={names} onWrite={props.onWrite} />
            <Example example={example} language="es" names={names} onWrite={props.onWrite} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Example(props: {
  readonly example: LineExample;
  readonly language: LineLanguage;
  readonly names: Readonly<Record<string, string>>;
  readonly onWrite: (line: string) => void;
}) {
  const line = props.example[props.language].replace(
    /\{(\w+)\}/g,
    (_, name: string) => props.names[name] ?? '',
  );
  return (
    <button
      type="button"
      class="chip-button"
      lang={props.language}
      onClick={() => props.onWrite(line)}
    >
      {line}
    </button>
  );
}
