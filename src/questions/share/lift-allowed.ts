import { byText } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { byWritten, type RecordOf } from '../../records/record.ts';

/**
 * May pools go where they reach goals and steps? Only where the group chose so before its first
 * stall: chosen later, people would know whose step the choice is for.
 */
export type LiftAllowed =
  | {
      readonly allowed: true;
      /** The season record from which the choice has stood. */
      readonly chosen: string;
      readonly since: string;
    }
  | { readonly allowed: false; readonly why: 'not_chosen' }
  | {
      readonly allowed: false;
      readonly why: 'chosen_too_late';
      readonly chosen: string;
      /** The day it was chosen on, and the day of the first stall (`YYYY-MM-DD`). */
      readonly since: string;
      readonly firstStall: string;
    };

/**
 * The choice stands from the earliest season record of an unbroken row that ends with the season as
 * it is now. Records are written in UTC and stalls open in local time, so a choice of the first
 * stall's own day is too late: which came first cannot be told. Nor can a device whose clock runs
 * behind make a choice older than the record it replaced.
 */
export function liftAllowed(ledger: Ledger): LiftAllowed {
  const { season, stalls } = ledger.setup;
  if (season?.sharing?.lift !== true) return { allowed: false, why: 'not_chosen' };
  let first = season;
  let before = versionBefore(ledger, first);
  while (before?.sharing?.lift === true) {
    first = before;
    before = versionBefore(ledger, first);
  }
  const written = before !== undefined && before.at > first.at ? before.at : first.at;
  const since = written.slice(0, 10);
  const [firstStall] = [...stalls.values()].map(({ starts }) => starts.slice(0, 10)).sort(byText);
  if (firstStall === undefined || since < firstStall) {
    return { allowed: true, chosen: first.id, since };
  }
  return { allowed: false, why: 'chosen_too_late', chosen: first.id, since, firstStall };
}

/** The season record that a later one replaced, or the one written before it. */
function versionBefore(ledger: Ledger, season: RecordOf<'season'>): RecordOf<'season'> | undefined {
  const { replaces } = season;
  if (replaces !== undefined) {
    const replaced = ledger.standing.get(replaces);
    return replaced?.kind === 'season' ? replaced : undefined;
  }
  const earlier = ledger.standing
    .records()
    .filter((record) => record.kind === 'season')
    .filter((record) => byWritten(record, season) < 0);
  return earlier.sort(byWritten).at(-1);
}
