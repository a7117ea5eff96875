import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';

/**
 * Whole shares of a whole total, as near as can be to exact targets: of all whole shares within the
 * bounds that add up to the total, those with the least sum of squared distances from the targets,
 * and so with the least largest distance too. Where the targets add up to the total this is the
 * method of largest remainders (Hamilton; Balinski and Young, Fair Representation, 1982); where
 * they add up to less or more, every target is raised or lowered alike first.
 *
 * Ties: of equal remainders the one listed first gets the unit.
 */
export interface NearestShares {
  readonly shares: readonly number[];
  /** Places whose remainder was equal at the cut, so that only the order told them apart. */
  readonly tied: readonly number[];
}

/** Exact targets, split into whole floors and what remains of each, which need only be compared. */
export interface Targets {
  /** The greatest whole number not above each target, in the order that settles ties. */
  readonly floors: readonly number[];
  /** Above 0 where the remainder at place `a` is larger than that at `b`, 0 where equal. */
  readonly compareRemainders: (a: number, b: number) => number;
}

export interface ShareBounds {
  /** Whole units that each must have at least. */
  readonly least: readonly number[];
  /** Whole units that each may have at most; Infinity where there is no bound. */
  readonly most: readonly number[];
}

/**
 * @param total whole units
 * @param bounds must leave room: the sum of `least` is at most the total, that of `most` at least
 */
export function nearestShares(total: number, targets: Targets, bounds: ShareBounds): NearestShares {
  const at = (level: number) => sharesAt(level, targets.floors, bounds);
  assert(sum(bounds.least) <= total, 'the least shares fit into the total');
  assert(sum(bounds.most) >= total, 'the total fits into the most shares');
  const level = highestLevel(total, at);
  const shares = at(level);
  const extra = total - sum(shares);
  if (extra === 0) return { shares, tied: [] };
  const next = at(level + 1);
  const waiting = [...shares.keys()].filter((place) => next[place] !== shares[place]);
  // The sort is stable: equal remainders stay in the order listed.
  waiting.sort((a, b) => targets.compareRemainders(b, a));
  for (const place of waiting.slice(0, extra)) shares[place] = (shares[place] ?? 0) + 1;
  return { shares, tied: tiedAtCut(waiting, extra, targets) };
}

/** Every floor raised by the level (lowered where it is negative), kept within its bounds. */
function sharesAt(level: number, floors: readonly number[], { least, most }: ShareBounds) {
  const shares: number[] = [];
  for (let place = 0; place < floors.length; place += 1) {
    const share = (floors[place] ?? 0) + level;
    const atMost = Math.min(share, most[place] ?? share);
    shares.push(Math.max(atMost, least[place] ?? atMost));
  }
  return shares;
}

/** The highest level at which the shares still fit into the total. */
function highestLevel(total: number, at: (level: number) => number[]): number {
  if (sum(at(0)) <= total && sum(at(1)) > total) return 0;
  let low = -1;
  while (sum(at(low)) > total) low *= 2;
  let high = 1;
  // Where every share stands at its most, going higher changes nothing.
  while (sum(at(high)) <= total && high < HIGHEST) high *= 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (sum(at(middle)) <= total) low = middle;
    else high = middle;
  }
  return low;
}

/** Above every total that is shared. */
const HIGHEST = 2 ** 50;

function tiedAtCut(waiting: readonly number[], extra: number, targets: Targets): readonly number[] {
  const last = waiting[extra - 1];
  const first = waiting[extra];
  if (last === undefined || first === undefined) return [];
  if (targets.compareRemainders(last, first) !== 0) return [];
  return waiting.filter((place) => targets.compareRemainders(place, last) === 0);
}
