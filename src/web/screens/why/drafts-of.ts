import type { BookRecord } from '../../../records/record.ts';
import type { Draft } from '../../book.ts';
import { contentOf } from '../../undo.ts';

/** What "Take this" writes, as drafts: for the book to stamp and save like any other. */
export function draftsOf(records: readonly BookRecord[]): Draft[] {
  return records.map((record) =>
    record.replaces === undefined
      ? contentOf(record)
      : { ...contentOf(record), replaces: record.replaces },
  );
}
