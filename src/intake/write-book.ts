import type { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';

/**
 * A book as the text of its file: the header, then the records in the order given (that of their
 * arrival), each with its fields as they came. Comes in pieces so that a large book is never one
 * string. Reading it back gives the same records.
 */
export function* writeBook(header: Header, records: Iterable<BookRecord>): Generator<string> {
  yield `${JSON.stringify(header)}\n`;
  for (const record of records) yield `${JSON.stringify(record)}\n`;
}
