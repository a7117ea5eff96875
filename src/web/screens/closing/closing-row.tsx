import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { closingWords } from '../../../statements/closing-words.ts';
import { useBook } from '../../book.ts';
import { Sentence } from '../../parts/sentence.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';
import { whyItem } from '../../why-address.ts';
import { nextLinks } from './closing-groups.ts';
import { leftInShort } from './left-in-short.ts';

const STATES = { done: say`done`, open: say`open`, 'not-needed': say`not needed` };

/** Products named in the line before they are counted, and named below. */
const PRODUCTS_NAMED_MAX = 8;

/** Records listed one by one before the rest is only counted. */
const RECORDS_MAX = 12;

/** One item: where it stands, what is left, why, what to do next, and the records behind it. */
export function ClosingRow({ item }: { readonly item: ClosingItem }) {
  const book = useBook();
  const { ledger } = book;
  const words = closingWords(item, ledger, book.workingDay(), say);
  const short = leftInShort(item, words.left, PRODUCTS_NAMED_MAX);
  const familyOf = (seller: string) => ledger.setup.sellers.get(seller)?.family ?? '';
  const links = item.state === 'open' ? nextLinks(item, familyOf) : [];
  const why = item.state === 'open' ? whyItem(item) : undefined;
  return (
    <li class={`closing-row closing-${item.state}`}>
      <div class="closing-head">
        <span class="closing-title">{words.title}</span>
        <StateMark mark={item.state} word={STATES[item.state]} />
      </div>
      {words.left !== '' && <p class="closing-left">{short}</p>}
      {short !== words.left && (
        <details>
          <summary>{say`each product`}</summary>
          <p>{words.left}</p>
        </details>
      )}
      {item.state === 'open' && (
        <p>
          {words.cause} {words.next}
        </p>
      )}
      {item.state !== 'open' && item.next === 'mind_the_date' && <p class="soft">{words.next}</p>}
      {(links.length > 0 || why !== undefined) && (
        <p class="next-steps no-print">
          {why !== undefined && (
            <a class="next-step" href={why}>
              {say`Why?`}
            </a>
          )}
          {links.map(([to, said]) => (
            <a key={to} class="next-step" href={to}>
              {said}
            </a>
          ))}
        </p>
      )}
      <Behind records={item.records} />
    </li>
  );
}

function Behind({ records }: { readonly records: readonly string[] }) {
  const { ledger } = useBook();
  if (records.length === 0) return null;
  const shown = records.slice(-RECORDS_MAX);
  return (
    <details class="no-print">
      <summary>{say.count(records.length)`# record behind it|# records behind it`}</summary>
      <ul class="record-list">
        {shown.length < records.length && (
          <li class="soft">
            {say`The last ${shown.length} of ${records.length}; the place’s own page has all.`}
          </li>
        )}
        {shown.map((id) => (
          <li key={id}>
            <Sentence record={ledger.standing.get(id)} />
          </li>
        ))}
      </ul>
    </details>
  );
}
