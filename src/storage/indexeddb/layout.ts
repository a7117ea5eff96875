import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { Held, ServerPlace } from '../../journal/book-copy.ts';
import type { BookName } from '../../journal/journal.ts';
import type { Header } from '../../records/header.ts';

/**
 * The tables of a device's store in the browser. Every key begins with the group; records are kept
 * as canonical text. A new layout gets a new version here and reads the old one's tables.
 */
export const LAYOUT_VERSION = 1;

export interface RecordRow extends BookName {
  readonly arrival: number;
  readonly id: string;
  readonly text: string;
}

export interface OutboxRow extends BookName {
  readonly number: number;
  readonly ids: readonly string[];
  readonly held?: Held;
}

export interface PlaceRow extends BookName {
  readonly place: ServerPlace;
}

export interface AsideRow extends BookName {
  readonly id: string;
  readonly text: string;
}

type BookKey = [group: string, season: string];

export interface Tables extends DBSchema {
  readonly books: { key: BookKey; value: Header };
  readonly records: {
    key: [group: string, arrival: number];
    value: RecordRow;
    indexes: { byId: [string, string, string]; bySeason: [string, string, number] };
  };
  readonly outbox: { key: [string, string, number]; value: OutboxRow };
  readonly places: { key: BookKey; value: PlaceRow };
  readonly aside: { key: [string, string, string]; value: AsideRow };
}

export type Database = IDBPDatabase<Tables>;

const ALL = ['books', 'records', 'outbox', 'places', 'aside'] as const;
export type Writing = IDBPTransaction<Tables, typeof ALL, 'readwrite'>;

/**
 * A transaction that is complete only once the disk has it: the platform's `strict` durability
 * (Indexed Database API 3.0), which the word "Saved on this phone" rests on.
 */
export function strictly(db: Database): Writing {
  return db.transaction(ALL, 'readwrite', { durability: 'strict' });
}

export function openDatabase(name: string): Promise<Database> {
  return openDB<Tables>(name, LAYOUT_VERSION, {
    upgrade(db, from) {
      if (from >= 1) return;
      db.createObjectStore('books', { keyPath: ['group', 'season'] });
      const records = db.createObjectStore('records', { keyPath: ['group', 'arrival'] });
      records.createIndex('byId', ['group', 'season', 'id'], { unique: true });
      records.createIndex('bySeason', ['group', 'season', 'arrival'], { unique: true });
      db.createObjectStore('outbox', { keyPath: ['group', 'season', 'number'] });
      db.createObjectStore('places', { keyPath: ['group', 'season'] });
      db.createObjectStore('aside', { keyPath: ['group', 'season', 'id'] });
    },
    // A newer version of the app in another window must not wait for this one.
    blocking: (_current, _blocked, event) => {
      if (event.target instanceof IDBDatabase) event.target.close();
    },
  });
}

/** Every key of a book in a table whose keys begin with group and season. */
export function wholeBook({ group, season }: BookName): IDBKeyRange {
  return IDBKeyRange.bound([group, season], [group, season, []]);
}
