import type { DatabaseSync, SQLOutputValue } from 'node:sqlite';
import { RECORD_COLUMNS, recordRow } from './rows.ts';
import { sameBytes } from './seal.ts';

/** How a copy compares: how many records it has, and the first thing that differs, if any. */
export interface Compared {
  readonly records: number;
  readonly difference: string | undefined;
}

/**
 * Compares a copy with the store it was made from, record by record. The store may have gone on
 * meanwhile: in each group it may have more at the end, and nothing else may differ.
 */
export function compareCopy(store: DatabaseSync, copy: DatabaseSync): Compared {
  const kept = store.prepare(
    `select ${RECORD_COLUMNS} from record where book_group = ? and arrival = ?`,
  );
  let records = 0;
  const inOrder = `select ${RECORD_COLUMNS} from record order by book_group, arrival`;
  for (const raw of copy.prepare(inOrder).iterate()) {
    const row = recordRow(raw);
    const original = kept.get(row.group, row.arrival);
    if (original === undefined || !sameRow(raw, original)) {
      return { records, difference: `record ${row.id} differs from the store's` };
    }
    records += 1;
  }
  return { records, difference: missingBooks(store, copy) };
}

/** A copy holds the books that the store had when it was made, word for word. */
function missingBooks(store: DatabaseSync, copy: DatabaseSync): string | undefined {
  const query = 'select book_group, season, header, seal from book order by book_group, season';
  const kept = store.prepare(query).all();
  const found = copy.prepare(query).all();
  const unknown = found.find((book) => !kept.some((other) => sameRow(book, other)));
  return unknown === undefined
    ? undefined
    : `book ${String(unknown.book_group)} ${String(unknown.season)} differs`;
}

type Raw = Record<string, SQLOutputValue>;

function sameRow(a: Raw, b: Raw): boolean {
  return Object.entries(a).every(([column, value]) => {
    const other = b[column];
    if (value instanceof Uint8Array) return other instanceof Uint8Array && sameBytes(value, other);
    return value === other;
  });
}
