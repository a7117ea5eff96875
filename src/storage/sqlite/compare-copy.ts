import type { DatabaseSync, SQLOutputValue } from 'node:sqlite';
import { RECORD_COLUMNS, recordRow, textOf, wholeOf } from './rows.ts';
import { sameBytes } from './seal.ts';

/** How a copy compares: how many records are the same, and the first thing that differs, if any. */
export interface Compared {
  readonly records: number;
  readonly difference: string | undefined;
}

/** The highest arrival number of each group. */
export type Heads = ReadonlyMap<string, number>;

export function headsOf(db: DatabaseSync): Heads {
  const rows = db.prepare('select book_group, max(arrival) as last from record group by 1').all();
  return new Map(rows.map(({ book_group, last }) => [textOf(book_group), wholeOf(last)]));
}

/**
 * Compares a copy with what it was made from, book by book and record by record. What came into
 * the original after the given heads may be in the copy or not; all else must be the same.
 */
export function compareCopy(original: DatabaseSync, copy: DatabaseSync, heads: Heads): Compared {
  const query = `select ${RECORD_COLUMNS} from record order by book_group, arrival`;
  const others = copy.prepare(query).iterate();
  let other = others.next();
  let records = 0;
  for (const row of original.prepare(query).iterate()) {
    if (other.done !== true && sameRow(row, other.value)) {
      records += 1;
      other = others.next();
      continue;
    }
    const { group, arrival, id } = recordRow(row);
    if (arrival <= (heads.get(group) ?? 0)) return { records, difference: `record ${id} differs` };
  }
  if (other.done !== true) {
    return { records, difference: `record ${recordRow(other.value).id} is not in the original` };
  }
  return { records, difference: bookDifference(original, copy) };
}

function bookDifference(original: DatabaseSync, copy: DatabaseSync): string | undefined {
  const query = 'select book_group, season, header, seal from book';
  const kept = original.prepare(query).all();
  const unknown = copy
    .prepare(query)
    .all()
    .find((book) => !kept.some((other) => sameRow(book, other)));
  if (unknown === undefined) return undefined;
  return `book ${textOf(unknown.book_group)} ${textOf(unknown.season)} differs`;
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
