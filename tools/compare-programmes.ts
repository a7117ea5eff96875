/**
 * Solves many random share-outs and lifts and has each confirmed by an integer-programming solver:
 * `node tools/compare-programmes.ts SEED HOW_MANY`. Exit code 1 where one is not equal.
 */

import { compareLifts, compareShares } from '../checks/outside/compare-programmes.ts';
import { loadHighs } from '../checks/outside/highs.ts';

const [seed = 1, howMany = 1000] = process.argv.slice(2).map(Number);
const highs = await loadHighs();
for (const [name, compare] of Object.entries({ shares: compareShares, lifts: compareLifts })) {
  const unequal = compare(highs, seed, howMany).filter(({ ours, theirs }) => ours !== theirs);
  console.log(`${howMany} ${name}: ${unequal.length} not equal to the integer programme`);
  if (unequal.length > 0) process.exitCode = 1;
}
