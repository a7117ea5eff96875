import { loadHighs } from '../checks/outside/highs.ts';
import { randomLift } from '../simulation/random-problems.ts';
import { seeded } from '../src/base/seeded.ts';
import { raiseProgramme } from '../src/solvers/raise/raise-programme.ts';
import { raiseToSteps } from '../src/solvers/raise/raise-to-steps.ts';
import { median } from './median.ts';

/**
 * Lifts of 200 sellers and 12 steps against the integer-programming solver HiGHS in the same run,
 * at equal optimum of goals and worth. Goals: at least 100 times faster at pools up to 1,000 units
 * and 5 times at 2,000, in at most 10 ms. Ours finds the leximin spread of the rest as well, which
 * the programme is not asked for. A programme that has not finished after 15 seconds counts as 15.
 *
 * node bench/lift.ts
 */
const POOLS = [50, 200, 500, 1000, 2000];
const ROUNDS = 5;
const LIMIT_SECONDS = 15;

const highs = await loadHighs();
const random = seeded(20270405);
let isMet = true;
for (let turn = 0; turn < 10; turn += 1) raiseToSteps(randomLift(random, 200, 12, 500));
console.log('  pool   ours ms  largest  programme ms   programme/ours');
for (const pool of POOLS) {
  const times = Array.from({ length: ROUNDS }, () => round(pool));
  const ratio = median(times.map(({ ours, theirs }) => theirs / ours));
  const ours = median(times.map((time) => time.ours));
  isMet = isMet && ratio >= (pool <= 1000 ? 100 : 5) && ours <= 10;
  console.log(
    [
      String(pool).padStart(6),
      ours.toFixed(2).padStart(9),
      Math.max(...times.map((time) => time.ours))
        .toFixed(2)
        .padStart(8),
      median(times.map((time) => time.theirs))
        .toFixed(0)
        .padStart(13),
      ratio.toFixed(0).padStart(16),
    ].join(' '),
  );
}
process.exitCode = isMet ? 0 : 1;

function round(pool: number) {
  const problem = randomLift(random, 200, 12, pool);
  const started = performance.now();
  const raised = raiseToSteps(problem);
  const between = performance.now();
  const options = { mip_rel_gap: 0, time_limit: LIMIT_SECONDS };
  const solved = highs.solve(raiseProgramme(problem), options);
  const ended = performance.now();
  const worth = problem.steps.reduce((sum, step) => sum + step.worth, 0) * 200;
  const optimum = raised.goals * (worth + 1) + raised.worth;
  if (solved.Status === 'Optimal' && Math.round(solved.ObjectiveValue) !== optimum) {
    throw new Error('not the same optimum');
  }
  return { ours: between - started, theirs: ended - between };
}
