import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, byWritten } from '../records/record.ts';

/**
 * What was written last, the latest first, as it stands: of an edit chain only its last record, and
 * removals, so that each can be taken back where it is seen.
 */
export function latestRecords(ledger: Ledger, most: number): BookRecord[] {
  const standing: BookRecord[] = [];
  for (const record of ledger.standing.records()) {
    if (ledger.standing.counts(record)) standing.push(record);
  }
  return standing.sort((a, b) => byWritten(b, a)).slice(0, most);
}
