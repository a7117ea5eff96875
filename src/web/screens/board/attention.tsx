import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { closingList } from '../../../questions/closing-list.ts';
import { closingWords } from '../../../statements/closing-words.ts';
import { useBook } from '../../book.ts';
import { leftInShort } from '../closing/left-in-short.ts';

const SHOWN = 8;

/** What needs attention: the open items of the closing list that come first. */
export function Attention() {
  const book = useBook();
  const { ledger } = book;
  const open = closingList(ledger, book.workingDay()).items.filter((item) => item.state === 'open');
  return (
    <section class="attention" aria-labelledby="attention-head">
      <h2 class="column-head" id="attention-head">
        Needs attention <a href="/closing">whole closing list</a>
      </h2>
      {open.length === 0 ? (
        <p class="none">✓ Nothing is open.</p>
      ) : (
        <ul class="attention-items">
          {open.slice(0, SHOWN).map((item) => {
            const words = closingWords(item, ledger, book.workingDay());
            return (
              <li key={item.item}>
                <a href={attentionLink(item.item, item.records)}>{words.title}</a>
                <Left item={item} words={words.left} />
                <span class="attention-next">{words.next}</span>
              </li>
            );
          })}
        </ul>
      )}
      {open.length > SHOWN && (
        <p class="roll-more">
          <a href="/closing">{open.length - SHOWN} more</a>
        </p>
      )}
    </section>
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
function attentionLink(item: string, records: readonly string[]): string {
  if (item.startsWith('owed:')) return `/accounts/money/${item}`;
  if (item.startsWith('stall:')) return `/stalls/${item.slice('stall:'.length)}`;
  if (item.startsWith('pool:')) return `/pools/${item.slice('pool:'.length)}`;
  if (item === 'stockroom-counted') return '/count';
  if (item === 'stockroom' || item === 'cashbox' || item === 'cards' || item === 'supplier') {
    return `/places/${item}`;
  }
  const last = records.at(-1);
  return last === undefined ? '/closing' : `/records/${last}`;
}
