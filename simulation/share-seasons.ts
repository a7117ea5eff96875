import Fraction from 'fraction.js';
import type { Seeded } from '../src/base/seeded.ts';
import { sharedTable } from '../src/solvers/share/shared-table.ts';

/** How a made season of stalls is worked. */
export interface ShareSeason {
  readonly sellers: number;
  readonly stalls: number;
  /** Sellers at each stall; all of them where it is the same number. */
  readonly present: number;
  readonly products: number;
  /** Whether what earlier share-outs owed is carried on. */
  readonly carries: boolean;
}

/**
 * Shares out a season of stalls, sellers and minutes by lot, and gives the largest
 * |credited − due| of any seller after any stall, in units.
 */
export function worstOfSeason(random: Seeded, season: ShareSeason): number {
  const carried = Array.from({ length: season.sellers }, () => new Fraction(0));
  let worst = new Fraction(0);
  for (let stall = 0; stall < season.stalls; stall += 1) {
    const present = random
      .shuffle([...carried.keys()])
      .slice(0, season.present)
      .sort((a, b) => a - b);
    const shared = sharedTable({
      columns: Array.from({ length: season.products }, () => random.whole(0, 25)),
      rows: present.map((seller) => ({
        weight: 15 * random.whole(2, 16),
        carried: season.carries ? (carried[seller] ?? new Fraction(0)) : new Fraction(0),
        locked: new Map<number, number>(),
      })),
    });
    for (const [at, seller] of present.entries()) {
      const given = (shared.cells[at] ?? []).reduce((sum, units) => sum + units, 0);
      const off = (carried[seller] ?? new Fraction(0)).add(given).sub(shared.due[at] ?? 0);
      carried[seller] = off;
      if (off.abs().compare(worst) > 0) worst = off.abs();
    }
  }
  return worst.valueOf();
}

/**
 * The best that can be promised for n sellers over any season known beforehand: one unit less
 * 1/(2n − 2) (Tijdeman, The chairman assignment problem, Discrete Mathematics 32, 1980).
 */
export function chairmanBound(sellers: number): number {
  return sellers < 2 ? 0 : 1 - 1 / (2 * sellers - 2);
}
