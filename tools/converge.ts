/**
 * Plays random histories of two and three phones that are apart and come together again:
 * `node tools/converge.ts HOW_MANY [SEED]`. Prints the smallest history that ends badly, with the
 * seed that makes it again; exit code 1 where there is one.
 */

import fc from 'fast-check';
import { histories } from '../simulation/convergence/histories.ts';
import { play } from '../simulation/convergence/history.ts';

const [howMany = 10_000, seed = 1] = process.argv.slice(2).map(Number);
const property = fc.asyncProperty(histories, async (history) => {
  const wrong = await play(history);
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
});
const started = performance.now();
const result = await fc.check(property, { numRuns: howMany, seed });
const seconds = ((performance.now() - started) / 1000).toFixed(1);
if (result.failed) {
  console.error(`seed ${seed}, path ${result.counterexamplePath}`);
  console.error(JSON.stringify(result.counterexample, undefined, 1));
  console.error(String(result.errorInstance));
  process.exitCode = 1;
} else console.log(`${howMany} histories from seed ${seed}, all alike in the end, ${seconds} s`);
