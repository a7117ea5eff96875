import { DatabaseSync } from 'node:sqlite';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { BookName } from '../../journal/journal.ts';
import { recordFrom } from '../../journal/plan-append.ts';
import type { Header } from '../../records/header.ts';
import type { BookRecord } from '../../records/record.ts';
import { keptDamagedLog } from './log-damage.ts';
import { type OpenRefusal, stateOf } from './open-database.ts';
import { booksIn, openSqliteStore } from './open-sqlite-store.ts';
import { textOf } from './rows.ts';
import { errorText, sqliteFailure } from './sqlite-failure.ts';
import { verify } from './verify.ts';

/** What a store held at one moment, verified; what is written later is not in it. */
export interface StoreReading {
  /** As in the port's `Store`: one line for each thing that is wrong. */
  readonly damage: readonly string[];
  readonly books: readonly Header[];
  /** Every record of a book, in the order of arrival. */
  recordsOf(book: BookName): Promise<readonly BookRecord[]>;
  close(): Promise<void>;
}

/**
 * Opens a store to read it and nothing else. One at rest is opened and verified as for writing;
 * one that another process writes is read beside its writer, with the same verification: its log
 * (WAL) lets others read what has been saved so far.
 */
export async function readSqliteStore(path: string): Promise<Outcome<StoreReading, OpenRefusal>> {
  const opened = await openSqliteStore(path);
  if (!opened.ok) {
    return opened.refusal.name === 'store_in_use' ? readBeside(path) : refused(opened.refusal);
  }
  const store = opened.value;
  return done({
    damage: store.damage,
    books: await store.books(),
    recordsOf: async (book) => {
      const journal = await store.open(book);
      return (await journal.readSince(0)).map(({ record }) => record);
    },
    close: () => store.close(),
  });
}

const BUSY_MS = 5_000;

function readBeside(path: string): Outcome<StoreReading, OpenRefusal> {
  const db = new DatabaseSync(path, { readOnly: true, timeout: BUSY_MS });
  try {
    // One transaction, so that what is verified is what is read.
    db.exec('begin');
    if (stateOf(db) !== 'ours') {
      db.close();
      return refused(notNow(path, 'it is not a store that this Cratebook reads'));
    }
    const lost = keptDamagedLog(path);
    const damage = [...(lost === undefined ? [] : [lost]), ...verify(db).damage];
    return done({
      damage,
      books: damage.length === 0 ? booksIn(db) : [],
      recordsOf: async (book) => recordsIn(db, book),
      close: async () => db.close(),
    });
  } catch (error) {
    db.close();
    if (sqliteFailure(error) === undefined) throw error;
    return refused(notNow(path, errorText(error)));
  }
}

function recordsIn(db: DatabaseSync, book: BookName): BookRecord[] {
  const rows = db
    .prepare('select text from record where book_group = ? and season = ? order by arrival')
    .all(book.group, book.season);
  return rows.map(({ text }) => recordFrom(textOf(text)));
}

function notNow(path: string, detail: string): OpenRefusal {
  const message = `${path} is in use and cannot be read beside its writer (${detail}); try again`;
  return { name: 'store_in_use', path, message };
}
