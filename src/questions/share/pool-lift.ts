import { done, type Outcome } from '../../base/outcome.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type LiftStep, lift } from '../lift.ts';
import { type PoolRefusal, poolShare } from './pool-share.ts';
import { type SharedOut, shareOut } from './share-out.ts';

/** What a pool of the book does where it is lifted, beside what an even share would do. */
export interface PoolLift {
  /** Units in the pool, products together. */
  readonly units: number;
  readonly sellers: readonly LiftedSeller[];
  readonly lifted: Reached;
  readonly even: Reached;
  /** The share-out of the lift: each product given out whole, each seller's total as lifted. */
  readonly shared: SharedOut;
}

export interface LiftedSeller {
  readonly seller: string;
  /** Credited units before the pool is shared; never below 0. */
  readonly credited: number;
  readonly goal?: number;
  /** Units of this pool. */
  readonly lifted: number;
  readonly even: number;
}

/** How far a way of sharing the pool brings everybody. */
export interface Reached {
  /** Sellers at or above their own goal. */
  readonly goals: number;
  /** Steps that sellers stand at or above, each seller's counted. */
  readonly steps: number;
  /** Worth of those steps, as the group set it; never an amount of money. */
  readonly worth: number;
}

/** What one step may count at most; a hundred steps then stay exact in the lift. */
export const STEP_WORTH_MOST = 1000;

/**
 * Every active seller takes part, whoever worked for the pool. Product by product the lift's totals
 * become a table by sharing the pool with these totals as weights: the exact due of each is then
 * its total, and every cell the floor or the ceiling of its part.
 *
 * @param worths what a prize step counts against others, by level: whole numbers from 0 to
 * `STEP_WORTH_MOST`, 1 where it is not named
 */
export function poolLift(
  ledger: Ledger,
  pool: string,
  worths: Readonly<Record<string, number>> = {},
): Outcome<PoolLift, PoolRefusal> {
  const waiting = poolShare(ledger, pool);
  if (!waiting.ok) return waiting;
  const { products } = waiting.value;
  const members = membersOf(ledger);
  if (members.length === 0) return { ok: false, refusal: { kind: 'no_sellers' } };
  const steps = [...ledger.setup.levels.values()].map(({ level, units }) => ({
    units,
    worth: Object.hasOwn(worths, level) ? (worths[level] ?? 1) : 1,
  }));
  const units = Object.values(products).reduce((sum, each) => sum + each, 0);
  const { give } = lift({ pool: units, sellers: members, steps });
  const weighted = (weightOf: (seller: string) => number) =>
    shareOut({
      products,
      sellers: members.map(({ seller }) => ({ seller, weight: weightOf(seller) })),
    });
  const even = weighted(() => 1);
  const shared = weighted((seller) => give[seller] ?? 0);
  const sellers = members.map((member) => ({
    ...member,
    lifted: shared.totals[member.seller] ?? 0,
    even: even.totals[member.seller] ?? 0,
  }));
  return done({
    units,
    sellers,
    lifted: reachedBy(sellers, steps, (one) => one.credited + one.lifted),
    even: reachedBy(sellers, steps, (one) => one.credited + one.even),
    shared,
  });
}

function membersOf(ledger: Ledger) {
  const active = [...ledger.setup.sellers.values()].filter((seller) => seller.active);
  return active.map(({ seller, goal }) => ({
    seller,
    credited: Math.max(0, ledger.balances.unitsOf('credit', `seller:${seller}`)),
    ...(goal === undefined ? {} : { goal }),
  }));
}

function reachedBy(
  sellers: readonly LiftedSeller[],
  steps: readonly LiftStep[],
  then: (seller: LiftedSeller) => number,
): Reached {
  let goals = 0;
  let count = 0;
  let worth = 0;
  for (const seller of sellers) {
    const units = then(seller);
    if (seller.goal !== undefined && units >= seller.goal) goals += 1;
    for (const step of steps) {
      if (step.units > units) continue;
      count += 1;
      worth += step.worth;
    }
  }
  return { goals, steps: count, worth };
}
