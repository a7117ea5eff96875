import { assert } from '../base/assert.ts';
import { byText } from '../base/order.ts';
import { done } from '../base/outcome.ts';
import { BOOK_VERSION } from '../records/header.ts';
import type { Arrived, BookName, Journal } from './journal.ts';
import { planAppend, recordFrom } from './plan-append.ts';
import type { Store } from './store.ts';

/**
 * The store that forgets: for tests, for the demo in the browser and for questions about a file.
 * It keeps texts, not objects, so that nobody can change a record through what was handed out.
 */
export function memoryStore(): Store {
  const groups = new Map<string, Group>();
  const books: BookName[] = [];
  let open = true;

  const openBook = (book: BookName): Journal => {
    const group = groups.get(book.group) ?? { rows: [], texts: new Map() };
    groups.set(book.group, group);
    if (!group.texts.has(book.season)) {
      group.texts.set(book.season, new Map());
      books.push(book);
    }
    return memoryJournal(book, group, () => assert(open, 'the store is open'));
  };
  return {
    damage: [],
    books: async () =>
      books
        .map(({ group, season }) => ({ book: BOOK_VERSION, group, season }) as const)
        .sort((a, b) => byText(a.group, b.group) || byText(a.season, b.season)),
    open: async (book) => openBook(book),
    close: async () => {
      open = false;
    },
  };
}

interface Group {
  /** Row n arrived under number n + 1. */
  readonly rows: { readonly season: string; readonly text: string }[];
  /** Canonical text by season, then id. */
  readonly texts: Map<string, Map<string, string>>;
}

function memoryJournal(book: BookName, group: Group, assertOpen: () => void): Journal {
  const append: Journal['append'] = async (records) => {
    assertOpen();
    const texts = group.texts.get(book.season) ?? new Map<string, string>();
    const plan = planAppend(records, (id) => texts.get(id));
    if (!plan.ok) return plan;
    const added = plan.value.fresh.map(({ record, text }): Arrived => {
      texts.set(record.id, text);
      return { arrival: group.rows.push({ season: book.season, text }), record };
    });
    return done({ added, already: plan.value.already });
  };
  const readSince: Journal['readSince'] = async (after, most = Number.POSITIVE_INFINITY) => {
    assertOpen();
    const found: Arrived[] = [];
    for (let arrival = after + 1; arrival <= group.rows.length; arrival += 1) {
      if (found.length >= most) break;
      const row = group.rows[arrival - 1];
      if (row?.season === book.season) found.push({ arrival, record: recordFrom(row.text) });
    }
    return found;
  };
  return { book, append, readSince, lastArrival: async () => group.rows.length };
}
