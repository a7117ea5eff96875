import type { Ledger } from '../ledger/ledger.ts';
import type { BookRecord } from '../records/record.ts';
import type { Draft } from './book.ts';

/**
 * The record that takes another one back, as nothing is ever deleted:
 * an added record is removed, an edit is edited back, a removal is written anew.
 */
export function undoDraft(ledger: Ledger, record: BookRecord): Draft {
  if (record.kind === 'void') {
    const removed = ledger.standing.get(record.voids);
    if (removed !== undefined) return contentOf(removed);
  }
  const earlier = record.replaces === undefined ? undefined : ledger.standing.get(record.replaces);
  if (earlier !== undefined) return { ...contentOf(earlier), replaces: record.id };
  return { kind: 'void', voids: record.id, reason: 'Undone' };
}

/** A record's own content, without what the device stamped and without what it replaced. */
export function contentOf(record: BookRecord): Draft {
  const { id: _id, at: _at, by: _by, replaces: _replaces, ...content } = record;
  // Leaving the stamped fields out of a record is exactly what a draft is.
  return content as Draft;
}
