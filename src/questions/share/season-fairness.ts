import Fraction from 'fraction.js';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type PoolWeights, poolWeights } from './pool-weights.ts';

/**
 * How the season's share-outs have treated each seller: units credited out of pools against units
 * due by weight. A method that looks at one share-out alone can round the same child down every
 * time; carrying this difference on is what prevents it.
 */
export interface SellerFairness {
  readonly seller: string;
  /** Whole units credited out of pools. */
  readonly credited: number;
  /** Exact units due out of what was shared, by weight. */
  readonly due: Fraction;
  /** Credited less due: negative where the seller has had too little so far. */
  readonly carried: Fraction;
}

export interface SeasonFairness {
  /** In the fixed order of their ids; only sellers who were credited or due anything. */
  readonly sellers: readonly SellerFairness[];
  /** The largest |credited − due| of all, in units. */
  readonly worst: number;
}

/**
 * Share-outs that set out to be otherwise are left out: a later one must not take back what a lift
 * or a share by hand gave on purpose.
 */
export function seasonFairness(ledger: Ledger): SeasonFairness {
  const credited = new Map<string, number>();
  const due = new Map<string, Fraction>();
  for (const shareout of ledger.movements()) {
    if (shareout.kind !== 'shareout') continue;
    if (shareout.basis === 'lift' || shareout.basis === 'hand') continue;
    let shared = 0;
    for (const [seller, lines] of Object.entries(shareout.lines)) {
      const units = sum(Object.values(lines));
      credited.set(seller, (credited.get(seller) ?? 0) + units);
      shared += units;
    }
    addDue(due, shared, poolWeights(ledger, shareout.pool, shareout.basis));
  }
  const names = [...new Set([...credited.keys(), ...due.keys()])].sort(byText);
  const sellers = names.map((seller) => {
    const units = credited.get(seller) ?? 0;
    const share = due.get(seller) ?? new Fraction(0);
    return { seller, credited: units, due: share, carried: new Fraction(units).sub(share) };
  });
  const worst = sellers.reduce((most, { carried }) => Math.max(most, carried.abs().valueOf()), 0);
  return { sellers, worst };
}

/** Adds what each seller is due of the units shared, by weight. */
function addDue(due: Map<string, Fraction>, shared: number, { weights }: PoolWeights): void {
  const all = sum(weights.map(({ weight }) => weight));
  if (all === 0) return;
  for (const { seller, weight } of weights) {
    const part = new Fraction(shared).mul(weight).div(all);
    due.set(seller, (due.get(seller) ?? new Fraction(0)).add(part));
  }
}
