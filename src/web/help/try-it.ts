import { assert } from '../../base/assert.ts';
import { done } from '../../base/outcome.ts';
import { memoryCopies } from '../../journal/memory-copy.ts';
import type { BookRecord } from '../../records/record.ts';
import { Book } from '../book.ts';
import type { Connection } from '../connection.ts';
import type { Machine } from '../machine.ts';
import { go } from '../navigation.ts';
import { madeUpOpen } from './made-up-open.ts';
import { MADE_UP_TODAY, madeUpRecords } from './made-up-records.ts';

/**
 * Opens the made-up book at a page, in the whole app, with every form and Undo. It lives in this
 * window's memory alone: nothing of it is kept on the device or sent, and the real book waits.
 */
export async function tryIt(opens: string): Promise<void> {
  const address = { group: 'made-up', season: 'example' };
  const opened = await Book.open(address, madeUpConnection(), madeUpMachine());
  assert(opened.ok, 'a book in memory opens');
  const leftAt = madeUpOpen.value?.leftAt ?? `${location.pathname}${location.search}`;
  madeUpOpen.value = { book: opened.value, leftAt };
  go(opens);
}

/** A server that is a list in memory: it has the made-up records and takes what is added. */
function madeUpConnection(): Connection {
  const records: BookRecord[] = [...madeUpRecords()];
  const arrivals = () => records.map((record, at) => ({ arrival: at + 1, record }));
  return {
    openSession: async () => done(undefined),
    endSession: async () => done(undefined),
    books: async () => done({ books: [], damage: [] }),
    makeBook: async (book) => done({ book: 'cratebook/1', ...book }),
    recordsAfter: async (_book, after) =>
      done({ records: arrivals().slice(after), last: records.length }),
    append: async (_book, added) => {
      const first = records.push(...added) - added.length;
      const places = added.map(({ id }, at) => ({ arrival: first + at + 1, id }));
      return done({ added: places, already: [] });
    },
  };
}

function madeUpMachine(): Machine {
  return {
    now: () => Date.now(),
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    today: () => MADE_UP_TODAY,
    pause: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
    receiptSeries: 'EX1-',
    copies: memoryCopies(),
    keeps: true,
    windows: { tell: () => undefined, listen: () => () => undefined },
  };
}
