import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, isMovement } from '../records/record.ts';

/**
 * Movements and removals that reached this copy of the book last, the latest first, as they stand:
 * of an edit chain only its last record, so that each can be taken back where it is seen. Not by
 * the time they carry: a device's clock may be years out, and its last line must be on top all the
 * same.
 */
export function latestRecords(ledger: Ledger, most: number): BookRecord[] {
  const shown = [...ledger.standing.records()].filter(
    (record) => (isMovement(record) || record.kind === 'void') && ledger.standing.counts(record),
  );
  return shown.slice(-most).reverse();
}
