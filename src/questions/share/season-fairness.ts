import Fraction from 'fraction.js';
import { byText } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { poolWeights } from './pool-weights.ts';

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

export function seasonFairness(ledger: Ledger): SeasonFairness {
  const credited = new Map<string, number>();
  const sharedOf = new Map<string, number>();
  for (const movement of ledger.movements()) {
    if (movement.kind !== 'shareout') continue;
    for (const [seller, lines] of Object.entries(movement.lines)) {
      const units = Object.values(lines).reduce((sum, each) => sum + each, 0);
      credited.set(seller, (credited.get(seller) ?? 0) + units);
      sharedOf.set(movement.pool, (sharedOf.get(movement.pool) ?? 0) + units);
    }
  }
  const due = dueOf(ledger, sharedOf);
  const names = [...new Set([...credited.keys(), ...due.keys()])].sort(byText);
  const sellers = names.map((seller) => {
    const units = credited.get(seller) ?? 0;
    const share = due.get(seller) ?? new Fraction(0);
    return { seller, credited: units, due: share, carried: new Fraction(units).sub(share) };
  });
  const worst = sellers.reduce((most, { carried }) => Math.max(most, carried.abs().valueOf()), 0);
  return { sellers, worst };
}

/** Exact units due to each seller out of what was shared of every pool. */
function dueOf(ledger: Ledger, sharedOf: ReadonlyMap<string, number>): Map<string, Fraction> {
  const due = new Map<string, Fraction>();
  for (const [pool, units] of sharedOf) {
    const { weights } = poolWeights(ledger, pool);
    const all = weights.reduce((sum, { weight }) => sum + weight, 0);
    for (const { seller, weight } of weights) {
      const part = new Fraction(units).mul(weight).div(all);
      due.set(seller, (due.get(seller) ?? new Fraction(0)).add(part));
    }
  }
  return due;
}
