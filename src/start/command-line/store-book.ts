import { writeBook } from '../../intake/write-book.ts';
import { Stop } from './stop.ts';

/** The first 16 bytes of an SQLite file (sqlite.org/fileformat2.html, section 1.3.1). */
const SQLITE_START = 'SQLite format 3\0';

export function isStoreStart(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes) === SQLITE_START;
}

/** Which book of a store; where there is only one, none needs to be named. */
export interface BookChoice {
  readonly group: string | undefined;
  readonly season: string | undefined;
}

/**
 * One book of a store file as the lines of a book file, so that both are read by one way. The store
 * may be in use: a running server goes on while its book is read.
 */
export async function* readStoreBook(path: string, choice: BookChoice): AsyncGenerator<Uint8Array> {
  const { readSqliteStore } = await import('../../storage/sqlite/read-sqlite-store.ts');
  const opened = await readSqliteStore(path);
  if (!opened.ok) throw new Stop(opened.refusal.message);
  const store = opened.value;
  try {
    const [damage] = store.damage;
    if (damage !== undefined) throw new Stop(`${path}: ${damage}`);
    const { books } = store;
    const fitting = books.filter(
      (book) =>
        (choice.group ?? book.group) === book.group &&
        (choice.season ?? book.season) === book.season,
    );
    const [header] = fitting;
    if (header === undefined || fitting.length > 1) {
      const names = books.map((book) => `--group ${book.group} --season ${book.season}`);
      const wanted = books.length === 0 ? 'it holds no book yet' : names.join(', or ');
      throw new Stop(`${path}: choose one book: ${wanted}`);
    }
    const records = await store.recordsOf({ group: header.group, season: header.season });
    const encoder = new TextEncoder();
    for (const line of writeBook(header, records)) yield encoder.encode(line);
  } finally {
    await store.close();
  }
}
