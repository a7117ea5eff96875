import { byText } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { byWritten } from '../../records/record.ts';

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
 * stall's own day is too late: which came first cannot be told.
 */
export function liftAllowed(ledger: Ledger): LiftAllowed {
  const { season, stalls } = ledger.setup;
  if (season?.sharing?.lift !== true) return { allowed: false, why: 'not_chosen' };
  let first = season;
  const versions = ledger.standing
    .records()
    .filter((record) => record.kind === 'season')
    .sort(byWritten);
  const now = versions.findIndex(({ id }) => id === season.id);
  for (const version of versions.slice(0, now).reverse()) {
    if (version.sharing?.lift !== true) break;
    first = version;
  }
  const since = first.at.slice(0, 10);
  const [firstStall] = [...stalls.values()].map(({ starts }) => starts.slice(0, 10)).sort(byText);
  if (firstStall === undefined || since < firstStall) {
    return { allowed: true, chosen: first.id, since };
  }
  return { allowed: false, why: 'chosen_too_late', chosen: first.id, since, firstStall };
}
