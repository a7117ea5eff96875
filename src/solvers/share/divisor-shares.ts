import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';

/**
 * Whole shares by a divisor method: unit after unit to whoever has the highest weight for its next
 * unit, where the methods differ in the point between two whole numbers at which the next is earned
 * (Balinski and Young, Fair Representation, 1982). No method of this kind takes a unit from anybody
 * because the total grew; some may give more than the exact share rounded up.
 *
 * Ties: of equal claims the one listed first.
 */
export type DivisorMethod = 'adams' | 'dean' | 'hill' | 'webster' | 'jefferson';

export interface DivisorShares {
  readonly shares: readonly number[];
  /** Places with equal claims on the last unit given; empty where the cut was clear. */
  readonly tied: readonly number[];
}

/**
 * @param total whole units; @param weights whole numbers, 0 or more, at least one above 0
 * @param least whole units that each with a weight has from the start
 */
export function divisorShares(
  total: number,
  weights: readonly number[],
  method: DivisorMethod,
  least = 0,
): DivisorShares {
  const all = sum(weights);
  assert(all > 0, 'somebody has a weight');
  // Nobody ends below the whole part of a share of the total less one unit for each.
  const sure = Math.max(0, total - weights.length);
  const shares = weights.map((weight) => {
    const part = Number((BigInt(weight) * BigInt(sure)) / BigInt(all));
    return weight === 0 ? 0 : Math.max(least, part);
  });
  const claims = weights.map((weight, at) => claimOf(weight, shares[at] ?? 0, method));
  let tied: readonly number[] = [];
  for (let left = total - sum(shares); left > 0; left -= 1) {
    const [first, ...others] = strongest(claims);
    assert(first !== undefined, 'somebody has a claim');
    tied = left === 1 && others.length > 0 ? [first, ...others] : [];
    shares[first] = (shares[first] ?? 0) + 1;
    claims[first] = claimOf(weights[first] ?? 0, shares[first] ?? 0, method);
  }
  return { shares, tied };
}

/** The square of weight over signpost, as a fraction; `below` 0 is a claim above every other. */
interface Claim {
  readonly above: bigint;
  readonly below: bigint;
}

function claimOf(weight: number, share: number, method: DivisorMethod): Claim {
  const { above, below } = signpost(BigInt(share), method);
  const square = BigInt(weight) ** 2n;
  return { above: square * below, below: above };
}

/** The square of the point at which the unit after `share` is earned. */
function signpost(share: bigint, method: DivisorMethod): { above: bigint; below: bigint } {
  const next = share + 1n;
  switch (method) {
    case 'adams':
      return { above: share ** 2n, below: 1n };
    case 'dean':
      return { above: (2n * share * next) ** 2n, below: (share + next) ** 2n };
    case 'hill':
      return { above: share * next, below: 1n };
    case 'webster':
      return { above: (share + next) ** 2n, below: 4n };
    case 'jefferson':
      return { above: next ** 2n, below: 1n };
  }
}

/** Places of the strongest claim, in the order listed. */
function strongest(claims: readonly Claim[]): number[] {
  let places: number[] = [];
  let best: Claim | undefined;
  for (const [at, claim] of claims.entries()) {
    if (claim.above === 0n) continue;
    const order = best === undefined ? 1 : compare(claim, best);
    if (order > 0) {
      places = [at];
      best = claim;
    } else if (order === 0) {
      places.push(at);
    }
  }
  return places;
}

function compare(a: Claim, b: Claim): number {
  // Claims above every other are told apart by weight alone.
  if (a.below === 0n && b.below === 0n) return order(a.above, b.above);
  return order(a.above * b.below, b.above * a.below);
}

function order(a: bigint, b: bigint): number {
  return a > b ? 1 : a < b ? -1 : 0;
}
