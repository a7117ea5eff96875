import Fraction from 'fraction.js';
import type { Seeded } from '../src/base/seeded.ts';
import type { ToRaise } from '../src/solvers/raise/raise-to-steps.ts';
import type { TableToShare } from '../src/solvers/share/shared-table.ts';

/** Made-up share-outs and lifts of a given size, for tests against other solvers and for bench. */

/** Shifts of 30 minutes to 5 hours in quarters of an hour. @param units about so many in all */
export function randomShare(
  random: Seeded,
  rows: number,
  columns: number,
  units: number,
): TableToShare {
  const each = Math.max(1, Math.floor((2 * units) / columns));
  return {
    columns: Array.from({ length: columns }, () => random.whole(1, each)),
    rows: Array.from({ length: rows }, () => ({
      weight: 15 * random.whole(2, 20),
      carried: new Fraction(0),
      locked: new Map<number, number>(),
    })),
  };
}

/** Credits up to 150, goals up to 250, steps about 20 units apart. */
export function randomLift(random: Seeded, members: number, steps: number, pool: number): ToRaise {
  return {
    pool,
    members: Array.from({ length: members }, () => {
      const height = random.whole(0, 150);
      return random.chance(80) ? { height, goal: random.whole(40, 250) } : { height };
    }),
    steps: Array.from({ length: steps }, (_, at) => ({
      height: 20 * (at + 1) + random.whole(0, 10),
      worth: random.whole(1, 20),
    })),
  };
}
