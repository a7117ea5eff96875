import type { Ledger } from '../ledger/ledger.ts';
import { proceedsDue } from './proceeds-due.ts';

/**
 * What the group keeps with prizes and without: a figure of the whole group, never parted by family
 * or seller. All money in minor units.
 */
export interface PrizeWaiver {
  readonly withPrizes: number;
  readonly withoutPrizes: number;
  /** More for each credited unit where the group does without prizes. */
  readonly morePerUnit: number;
  readonly more: number;
}

/** Undefined where the season's terms for proceeds do not name a waiver. */
export function prizeWaiver(ledger: Ledger): PrizeWaiver | undefined {
  const due = proceedsDue(ledger);
  const waiver = ledger.setup.proceeds?.waiver;
  if (due === undefined || waiver === undefined) return undefined;
  const more = due.credited * waiver.cents;
  return {
    withPrizes: due.due,
    withoutPrizes: due.due + more,
    morePerUnit: waiver.cents,
    more,
  };
}
