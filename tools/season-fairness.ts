/**
 * How far any seller's credit strays from what is due over made seasons of stalls, with what
 * earlier share-outs owed carried on and without, against the published bound:
 * `node tools/season-fairness.ts HOW_MANY`.
 */

import { chairmanBound, worstOfSeason } from '../simulation/share-seasons.ts';
import { seeded } from '../src/base/seeded.ts';

const [howMany = 1000] = process.argv.slice(2).map(Number);
const sizes = [
  { sellers: 6, present: 6 },
  { sellers: 6, present: 3 },
  { sellers: 14, present: 14 },
  { sellers: 14, present: 4 },
  { sellers: 40, present: 6 },
  { sellers: 40, present: 40 },
];
console.log('sellers  at a stall  carried: worst, in one season of  not carried: worst  bound');
for (const size of sizes) {
  const season = { ...size, stalls: 30, products: 8 };
  const worsts = Array.from({ length: howMany }, (_, seed) =>
    worstOfSeason(seeded(seed), { ...season, carries: true }),
  );
  const without = Array.from({ length: howMany }, (_, seed) =>
    worstOfSeason(seeded(seed), { ...season, carries: false }),
  );
  const beyond = worsts.filter((worst) => worst >= 1).length;
  console.log(
    [
      String(size.sellers).padStart(7),
      String(size.present).padStart(11),
      Math.max(...worsts)
        .toFixed(3)
        .padStart(16),
      `${beyond} of ${howMany} at 1 or more`.padStart(26),
      Math.max(...without)
        .toFixed(3)
        .padStart(12),
      chairmanBound(size.sellers).toFixed(3).padStart(8),
    ].join(' '),
  );
}
