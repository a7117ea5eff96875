import { type Finding, saidOf } from '../../intake/finding.ts';
import type { FindingList } from '../../intake/finding-list.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { BookRecord } from '../../records/record.ts';

/** A book whose lines were all readable, with its records folded, to be checked as a whole. */
export interface CheckedBook {
  readonly ledger: Ledger;
  readonly records: readonly BookRecord[];
  /** The line of each record, in step with `records`; without it, places in the list from 1. */
  readonly lines?: readonly number[];
}

/** One check: looks at the whole book and tells what it finds. */
export type BookCheck = (book: CheckedBook, findings: FindingList) => void;

export function lineAt(book: CheckedBook, index: number): number {
  return book.lines?.[index] ?? index + 1;
}

/** The line of a record that is told about rarely, so that no index of lines is kept. */
export function lineOf(book: CheckedBook, record: BookRecord | undefined): number {
  const index = record === undefined ? -1 : book.records.indexOf(record);
  return index < 0 ? 1 : lineAt(book, index);
}

/** A finding about a record of the book. */
export function about(
  book: CheckedBook,
  record: BookRecord,
  severity: Finding['severity'],
  field: string,
  said: unknown,
  wanted: string,
): Finding {
  const line = lineOf(book, record);
  return { line, record: record.id, field, said: saidOf(said), wanted, severity };
}
