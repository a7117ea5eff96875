import type { Ledger } from '../../../ledger/ledger.ts';
import { type Edit, recordsOfEdits } from '../../../questions/explain/edits.ts';
import type { Draft } from '../../book.ts';
import { contentOf } from '../../undo.ts';

/** What "Take this" writes: the edits as drafts, for the book to stamp and save like any other. */
export function editDrafts(edits: readonly Edit[], ledger: Ledger): Draft[] {
  const unwritten = { id: '', at: '', by: '' };
  return recordsOfEdits(edits, ledger, () => unwritten).map((record) =>
    record.replaces === undefined
      ? contentOf(record)
      : { ...contentOf(record), replaces: record.replaces },
  );
}
