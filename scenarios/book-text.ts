import type { Header } from '../src/records/header.ts';
import type { BookRecord } from '../src/records/record.ts';

/** A book file's text: the header, then a record a line. */
export function bookText(header: Header, records: readonly BookRecord[]): string {
  return [header, ...records].map((line) => `${JSON.stringify(line)}\n`).join('');
}
