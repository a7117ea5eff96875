/**
 * Plants mistakes in made seasons and prints how often explain finds them:
 * `node tools/measure-mistakes.ts [FIRST_SEED] [SEASONS] [PAIRS_A_SEASON]`.
 */
import { measurePairs, measureSingles, type Outcome } from '../simulation/mistakes/measure.ts';
import { report } from '../simulation/mistakes/report.ts';

const [first = 1, seasons = 50, pairs = 4] = process.argv.slice(2).map(Number);
const outcomes: Outcome[] = [];
for (let seed = first; seed < first + seasons; seed += 1) {
  for (const outcome of measureSingles(seed)) outcomes.push(outcome);
  for (const outcome of measurePairs(seed, pairs)) outcomes.push(outcome);
}
process.stdout.write(report(outcomes));
