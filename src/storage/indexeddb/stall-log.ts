import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { BookName } from '../../journal/journal.ts';
import type { StallEntry } from '../../records/stall-entry.ts';

/**
 * The lines of stall sheets as a phone writes them, one strict transaction a line, until they are
 * handed in with a record (and after that too: nothing is taken away). A store of its own, so that
 * a sale waits for nothing else, and an older version of the app never meets it.
 */
interface Tables extends DBSchema {
  readonly entries: {
    key: [group: string, season: string, stall: string, id: string];
    value: StallLine;
  };
}

/** A line with the book and the stall that it belongs to. */
export interface StallLine extends BookName {
  readonly stall: string;
  readonly id: string;
  readonly entry: StallEntry;
}

export interface StallLog {
  /** The lines that this phone wrote for a stall. */
  read(): Promise<StallEntry[]>;
  /**
   * Resolves once the disk has the line: it then survives a closed browser and a dead battery.
   * False where it could not be kept.
   */
  write(entry: StallEntry): Promise<boolean>;
}

/** The name under which a device keeps them. */
export const STALL_STORE = 'cratebook-stalls';

let opened: Promise<IDBPDatabase<Tables>> | undefined;

/** @param name of the database within the app's own origin */
export function stallLog(name: string, { group, season }: BookName, stall: string): StallLog {
  return {
    read: async () => {
      const db = await openOnce(name);
      const range = IDBKeyRange.bound([group, season, stall], [group, season, stall, []]);
      const rows = (await db?.getAll('entries', range).catch(() => undefined)) ?? [];
      return rows.map(({ entry }) => entry);
    },
    write: async (entry) => {
      const db = await openOnce(name);
      if (db === undefined) return false;
      try {
        const writing = db.transaction('entries', 'readwrite', { durability: 'strict' });
        await Promise.all([
          writing.store.put({ group, season, stall, id: entry.id, entry }),
          writing.done,
        ]);
        return true;
      } catch {
        // A full disk, or a browser that took its store away: the caller says so.
        return false;
      }
    },
  };
}

/** Every line that this phone wrote, of every book and stall. */
export async function everyStallLine(name: string): Promise<readonly StallLine[]> {
  const db = await openOnce(name);
  return (await db?.getAll('entries').catch(() => undefined)) ?? [];
}

/** Undefined where the browser keeps nothing. A closed one is opened again at the next line. */
async function openOnce(name: string): Promise<IDBPDatabase<Tables> | undefined> {
  opened ??= openDB<Tables>(name, 1, {
    upgrade: (db) =>
      void db.createObjectStore('entries', { keyPath: ['group', 'season', 'stall', 'id'] }),
    blocking: (_current, _blocked, event) => {
      if (event.target instanceof IDBDatabase) event.target.close();
      opened = undefined;
    },
    terminated: () => {
      opened = undefined;
    },
  });
  const db = await opened.catch(() => undefined);
  if (db === undefined) opened = undefined;
  return db;
}
