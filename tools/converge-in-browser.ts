/**
 * Plays random histories of two and three phones as `tools/converge.ts` does, but on the real
 * server over HTTP and on the databases of a real browser:
 * `node tools/converge-in-browser.ts HOW_MANY [SEED]`. Exit code 1 where one ends badly.
 */

import fc from 'fast-check';
import { BrowserHistories } from '../checks/browser/converge/browser-histories.ts';
import { histories } from '../simulation/convergence/histories.ts';

const [howMany = 200, seed = 1] = process.argv.slice(2).map(Number);
const browser = new BrowserHistories();
await browser.start();
const started = performance.now();
let steps = 0;
for (const [at, history] of fc.sample(histories, { numRuns: howMany, seed }).entries()) {
  steps += history.steps.length;
  const wrong = await browser.play(history);
  if (wrong.length === 0) continue;
  process.exitCode = 1;
  console.error(`history ${at} of seed ${seed}: ${wrong.join('; ')}`);
  console.error(JSON.stringify(history));
}
const seconds = ((performance.now() - started) / 1000).toFixed(0);
const came = process.exitCode === 1 ? 'not all alike' : 'all alike in the end';
console.log(`${howMany} histories of ${steps} steps from seed ${seed}: ${came}, ${seconds} s`);
await browser.end();
process.exit();
