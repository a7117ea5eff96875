import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Finding } from '../intake/finding.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';

/** Stands in for rooms that are being built; goes away with them. */
export interface Refusal {
  readonly name: string;
  readonly message: string;
}

export function mayAppend(_ledger: Ledger, _record: BookRecord): Refusal | undefined {
  return undefined;
}

export function readRecord(value: unknown, line: number): Outcome<BookRecord, Finding[]> {
  if (typeof value === 'object' && value !== null && 'kind' in value && 'id' in value) {
    return done(value as BookRecord);
  }
  return refused([{ line, field: '', said: value, wanted: 'a record', severity: 'error' }]);
}

export function readBook(
  text: string,
): Outcome<{ header: Header; records: BookRecord[] }, Finding[]> {
  try {
    const [header, ...records] = text
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line));
    return done({ header, records });
  } catch {
    return refused([{ line: 1, field: '', said: '', wanted: 'a book file', severity: 'error' }]);
  }
}
