import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, byWritten, isMovement } from '../records/record.ts';

/**
 * Movements and removals that were written last, the latest first, as they stand: of an edit chain
 * only its last record, so that each can be taken back where it is seen.
 */
export function latestRecords(ledger: Ledger, most: number): BookRecord[] {
  const standing: BookRecord[] = [];
  for (const record of ledger.standing.records()) {
    const shown = isMovement(record) || record.kind === 'void';
    if (shown && ledger.standing.counts(record)) standing.push(record);
  }
  return standing.sort((a, b) => byWritten(b, a)).slice(0, most);
}
