import { byText } from '../../base/order.ts';
import type { CopyStore } from '../../journal/book-copy.ts';
import type { Arrived, BookName, Journal } from '../../journal/journal.ts';
import { recordFrom } from '../../journal/plan-append.ts';
import { BOOK_VERSION } from '../../records/header.ts';
import { indexedDbCopy } from './indexeddb-copy.ts';
import { type Database, openDatabase, strictly } from './layout.ts';
import { appendWithin, inOneStep, lastArrival } from './writing.ts';

/**
 * The store of a device in its browser. What it says is kept survives closing the browser and a
 * dead battery. The platform checks its own files; this store finds no damage of its own.
 *
 * @param name of the database within the app's own origin
 */
export async function openIndexedDbStore(name: string): Promise<CopyStore> {
  const db = await openDatabase(name);
  const make = async (book: BookName): Promise<Journal> => {
    const { group, season } = book;
    // A full disk makes the book with its first record instead, which is then refused by name. What
    // is asked later is answered after this, so nobody waits for it.
    const writing = strictly(db);
    const row = { book: BOOK_VERSION, group, season } as const;
    writing
      .objectStore('books')
      .put(row)
      .catch(() => undefined);
    writing.done.catch(() => undefined);
    return journalOver(db, book);
  };
  return {
    damage: [],
    books: async () => {
      const books = await db.getAll('books');
      return books.sort((a, b) => byText(a.group, b.group) || byText(a.season, b.season));
    },
    open: make,
    openCopy: async (book) => indexedDbCopy(db, await make(book)),
    close: async () => db.close(),
  };
}

function journalOver(db: Database, book: BookName): Journal {
  const { group, season } = book;
  return {
    book,
    append: (records) => inOneStep(db, (writing) => appendWithin(writing, book, records)),
    readSince: async (after, most) => {
      // For the platform, a count of 0 means all.
      if (most === 0) return [];
      const range = IDBKeyRange.bound([group, season, after], [group, season, []], true);
      const rows = await db.getAllFromIndex('records', 'bySeason', range, most);
      return rows.map(({ arrival, text }): Arrived => ({ arrival, record: recordFrom(text) }));
    },
    lastArrival: () => lastArrival(db.transaction('records').store, group),
  };
}
