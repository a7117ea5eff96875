import type { DatabaseSync } from 'node:sqlite';
import { assert } from '../../base/assert.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Arrived, BookName, Journal } from '../../journal/journal.ts';
import { recordFrom } from '../../journal/plan-append.ts';
import type { Store } from '../../journal/store.ts';
import type { Header } from '../../records/header.ts';
import { type BackupOutcome, backup } from './backup.ts';
import { type OpenDatabase, type OpenRefusal, openDatabase } from './open-database.ts';
import { textOf, wholeOf } from './rows.ts';
import type { Salvage } from './salvage.ts';
import { SqliteWriter } from './sqlite-writer.ts';
import { verify } from './verify.ts';

/** The store in one SQLite file. */
export interface SqliteStore extends Store {
  /**
   * Writes a copy that is consistent although the store goes on being used, reads it back and
   * compares it record by record before it says it is good. One file, with no companions.
   */
  backup(path: string): Promise<BackupOutcome>;
}

/**
 * Opens a store file, making it where it is new, and verifies all of it. A damaged store opens for
 * reading what is sound; see `damage`.
 */
export async function openSqliteStore(path: string): Promise<Outcome<SqliteStore, OpenRefusal>> {
  const opened = openDatabase(path);
  if (!opened.ok) return refused(opened.refusal);
  return done(storeOver(opened.value));
}

function storeOver({ db, letGo, damage: lost }: OpenDatabase): SqliteStore {
  const { damage: found, heads, salvage } = verify(db);
  const damage = [...lost, ...found];
  const writer = new SqliteWriter(db, heads, damage);
  return {
    damage,
    books: async () => booksIn(db),
    open: async (book) => {
      writer.makeBook(book);
      return salvage === undefined
        ? journalOver(db, book, writer)
        : salvagedJournal(book, writer, salvage);
    },
    backup: async (target) => backup(db, target, damage),
    close: async () => {
      writer.flush();
      db.close();
      letGo();
    },
  };
}

export function booksIn(db: DatabaseSync): readonly Header[] {
  const rows = db.prepare('select header from book order by book_group, season').all();
  return rows.map(({ header }) => JSON.parse(textOf(header)) as Header);
}

function journalOver(db: DatabaseSync, book: BookName, writer: SqliteWriter): Journal {
  const since = db.prepare(
    `select arrival, text from record
     where book_group = ? and arrival > ? and season = ? order by arrival limit ?`,
  );
  return {
    book,
    append: (records) => writer.append(book, records),
    readSince: async (after, most = -1) => {
      const rows = since.all(book.group, after, book.season, most);
      return rows.map(
        ({ arrival, text }): Arrived => ({
          arrival: wholeOf(arrival),
          record: recordFrom(textOf(text)),
        }),
      );
    },
    lastArrival: async () => writer.lastArrival(book.group),
  };
}

/** Reads what is sound of a damaged file; the writer refuses every append. */
function salvagedJournal(book: BookName, writer: SqliteWriter, { sound }: Salvage): Journal {
  const rows = sound.get(book.group) ?? [];
  const ours = rows.filter((row) => row.season === book.season);
  return {
    book,
    append: (records) => writer.append(book, records),
    readSince: async (after, most = Number.POSITIVE_INFINITY) => {
      assert(most >= 0, 'a page of no less than nothing');
      const later = ours.filter((row) => row.arrival > after).slice(0, most);
      return later.map(({ arrival, text }) => ({ arrival, record: recordFrom(text) }));
    },
    lastArrival: async () => rows.at(-1)?.arrival ?? 0,
  };
}
