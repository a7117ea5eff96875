import { IdTable } from '../base/id-table.ts';
import type { QuickRecords } from '../intake/quick/quick-records.ts';
import { Standing } from '../ledger/standing.ts';
import { type Claimant, claimedBy } from '../records/record.ts';
import { claimFault, claimRings } from './claims.ts';

/**
 * Which records of a quickly read book count, from those alone that claim another or are claimed.
 * Undefined where a claim does not fit what it claims.
 */
export function quickClaims(records: QuickRecords): Standing<Claimant> | undefined {
  const claimants = [...records.claims];
  const places = new IdTable();
  for (const { id } of claimants) places.add(id);
  for (const claim of records.claims) {
    const target = claimedBy(claim) ?? '';
    const kind = records.kindAt(records.placeOf(target));
    if (kind === undefined) return undefined;
    // When it was written only matters of a claim, and a claim is in the list already.
    if (places.add(target) !== undefined) claimants.push({ id: target, at: '', kind });
  }
  const standing = new Standing(claimants, places);
  const get = (id: string) => standing.get(id);
  const hasFault = records.claims.some((claim) => claimFault(claim, get) !== undefined);
  return hasFault || claimRings(records.claims, get).length > 0 ? undefined : standing;
}
