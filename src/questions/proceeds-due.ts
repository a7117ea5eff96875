import type { Ledger } from '../ledger/ledger.ts';

/** What the group keeps for its credited units by the season's steps; all money in minor units. */
export interface ProceedsDue {
  /** Units credited to sellers so far, all products together. */
  readonly credited: number;
  /** Active sellers with at least one credited unit. */
  readonly sellers: number;
  /** Minor units for each credited unit. */
  readonly centsPerUnit: number;
  readonly due: number;
  /** What `settle` records have brought so far. */
  readonly settled: number;
}

/** Undefined where the season has no steps for proceeds. */
export function proceedsDue(ledger: Ledger): ProceedsDue | undefined {
  const terms = ledger.setup.proceeds;
  if (terms === undefined) return undefined;
  let credited = 0;
  let sellers = 0;
  for (const seller of ledger.setup.sellers.values()) {
    const units = ledger.balances.unitsOf('credit', `seller:${seller.seller}`);
    credited += units;
    if (seller.active && units > 0) sellers += 1;
  }
  // The average is compared as a fraction: `from` is reached when from × sellers ≤ units.
  const parts = terms.basis === 'average' ? sellers : 1;
  let step: { readonly from: number; readonly cents: number } | undefined;
  for (const next of terms.steps) {
    const reached = parts > 0 && next.from * parts <= credited;
    if (reached && (step === undefined || next.from > step.from)) step = next;
  }
  const centsPerUnit = step?.cents ?? 0;
  const due = credited * centsPerUnit;
  return { credited, sellers, centsPerUnit, due, settled: 0 - ledger.balances.moneyOf('proceeds') };
}
