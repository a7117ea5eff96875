import type { DatabaseSync, SQLOutputValue } from 'node:sqlite';
import { RECORD_COLUMNS } from './rows.ts';
import { sameBytes } from './seal.ts';

/** How a copy compares: how many records are the same, and the first thing that differs, if any. */
export interface Compared {
  readonly records: number;
  readonly difference: string | undefined;
}

/** Compares a copy with what it was made from, book by book and record by record. */
export function compareCopy(original: DatabaseSync, copy: DatabaseSync): Compared {
  const books = compareRows(
    original,
    copy,
    'select book_group, season, header, seal from book order by book_group, season',
  );
  const records = compareRows(
    original,
    copy,
    `select ${RECORD_COLUMNS} from record order by book_group, arrival`,
  );
  if (books.same === undefined) return { records: 0, difference: `book ${books.at} differs` };
  if (records.same === undefined) {
    return { records: records.at - 1, difference: `record ${records.at} differs` };
  }
  return { records: records.same, difference: undefined };
}

/** How many rows there are where all are the same; else the place, from 1, of the first that is not. */
function compareRows(
  original: DatabaseSync,
  copy: DatabaseSync,
  query: string,
): { readonly same: number | undefined; readonly at: number } {
  const others = copy.prepare(query).iterate();
  let at = 0;
  for (const row of original.prepare(query).iterate()) {
    at += 1;
    const other = others.next();
    if (other.done === true || !sameRow(row, other.value)) return { same: undefined, at };
  }
  return others.next().done === true ? { same: at, at } : { same: undefined, at: at + 1 };
}

type Raw = Record<string, SQLOutputValue>;

function sameRow(a: Raw, b: Raw): boolean {
  for (const column in a) {
    const [one, other] = [a[column], b[column]];
    if (one === other) continue;
    const bytes = one instanceof Uint8Array && other instanceof Uint8Array;
    if (!bytes || !sameBytes(one, other)) return false;
  }
  return true;
}
