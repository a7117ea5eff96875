import { type AttentionItem, attention } from '../../../questions/attention.ts';
import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { closingWords } from '../../../statements/closing-words.ts';
import { useBook } from '../../book.ts';
import { link } from '../../parts/link.tsx';
import { useInSteps } from '../../parts/use-in-steps.ts';
import { say } from '../../say.ts';
import { whyItem } from '../../why-address.ts';
import { leftInShort } from '../closing/left-in-short.ts';

const SHOWN = 8;

/** What needs attention, by day and by the money that hangs on it. */
export function Attention() {
  const book = useBook();
  const version = book.version.value;
  const day = book.workingDay();
  // The closing list adds the book up several times: the places are shown before it.
  const open = useInSteps(() => attention(book.ledger, day), `${version} ${day}`);
  return (
    <section class="attention" aria-labelledby="attention-head">
      <h2 class="column-head" id="attention-head">
        {say.pieces`Needs attention ${link('/closing', say`whole closing list`)}`}
      </h2>
      {open?.length === 0 && <p class="none">{say`✓ Nothing is open.`}</p>}
      {open !== undefined && open.length > 0 && (
        <ul class="attention-items">
          {open.slice(0, SHOWN).map((each) => (
            <AttentionRow key={each.item.item} {...each} />
          ))}
        </ul>
      )}
      {open !== undefined && open.length > SHOWN && (
        <p class="roll-more">
          <a href="/closing">{say`${open.length - SHOWN} more`}</a>
        </p>
      )}
    </section>
  );
}

function AttentionRow({ item, short }: AttentionItem) {
  const book = useBook();
  const words = closingWords(item, book.ledger, book.workingDay(), say);
  const missing = short ? say`${say.money(short, book.currency)} missing that morning` : '';
  const why = whyItem(item);
  return (
    <li>
      <a href={short === undefined ? linkOf(item.item, item.records) : '/match/debits'}>
        {words.title}
      </a>
      <Left item={item} words={missing || words.left} />
      <span class="attention-next">
        {words.next} {why && <a href={why}>{say`Why?`}</a>}
      </span>
    </li>
  );
}

const PRODUCTS_NAMED_MAX = 3;

/** What is left of an item with the shape of its meaning; many products are only counted. */
function Left({ item, words }: { readonly item: ClosingItem; readonly words: string }) {
  if (words === '') return null;
  const differs = item.item === 'stockroom-counted';
  const goods = item.lines !== undefined;
  const look = differs ? 'difference' : goods ? 'goods' : 'money';
  return (
    <span class={`attention-left figure-${look}`}>
      <span class={`shape shape-${look}`} aria-hidden="true">
        {differs ? '▲' : ''}
      </span>
      {leftInShort(item, words, PRODUCTS_NAMED_MAX)}
    </span>
  );
}

/** Where an item is worked on: an account's own list, the stall, or its first record. */
function linkOf(item: string, records: readonly string[]): string {
  if (item.startsWith('owed:')) return `/accounts/money/${item}`;
  if (item.startsWith('stall:')) return `/stalls/${item.slice('stall:'.length)}`;
  if (item.startsWith('pool:')) return `/pools/${item.slice('pool:'.length)}`;
  if (item.startsWith('deadline:')) return '/closing';
  if (item === 'stockroom-counted') return '/count';
  if (item === 'stockroom' || item === 'cashbox' || item === 'cards' || item === 'supplier') {
    return `/places/${item}`;
  }
  const last = records.at(-1);
  return last === undefined ? '/closing' : `/records/${last}`;
}
