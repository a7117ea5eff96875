import type { Highs } from 'highs';
import { randomLift, randomShare } from '../../simulation/random-problems.ts';
import { seeded } from '../../src/base/seeded.ts';
import { raiseProgramme } from '../../src/solvers/raise/raise-programme.ts';
import { raiseToSteps } from '../../src/solvers/raise/raise-to-steps.ts';
import { sharedTable } from '../../src/solvers/share/shared-table.ts';
import { shareCost, shareProgramme } from './share-programme.ts';

/** Random problems solved by us and as integer programmes; what came out, told per problem. */
export interface Compared {
  readonly ours: number;
  readonly theirs: number;
}

type Solver = Pick<Highs, 'solve'>;

/** Share-outs of 2 to 14 sellers and 2 to 8 products: the squares that a choice can change. */
export function compareShares(highs: Solver, seed: number, count: number): Compared[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const rows = random.whole(2, 14);
    const table = randomShare(random, rows, random.whole(2, 8), random.whole(4, 300));
    const shared = sharedTable(table);
    const totals = shared.cells.map((cells) => cells.reduce((sum, units) => sum + units, 0));
    const solved = highs.solve(shareProgramme(table, totals), { mip_rel_gap: 0 });
    return { ours: shareCost(table, shared), theirs: optimum(solved) };
  });
}

/** Lifts of 1 to 20 sellers and 1 to 8 steps: goals times their weight, and worth. */
export function compareLifts(highs: Solver, seed: number, count: number): Compared[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const members = random.whole(1, 20);
    const problem = randomLift(random, members, random.whole(1, 8), random.whole(1, 250));
    const raised = raiseToSteps(problem);
    const worth = problem.steps.reduce((sum, step) => sum + step.worth, 0);
    const solved = highs.solve(raiseProgramme(problem), { mip_rel_gap: 0 });
    return { ours: raised.goals * (worth * members + 1) + raised.worth, theirs: optimum(solved) };
  });
}

/** Not a number where the solver did not finish: equal to nothing. */
function optimum({ Status, ObjectiveValue }: ReturnType<Solver['solve']>): number {
  return Status === 'Optimal' ? Math.round(ObjectiveValue) : Number.NaN;
}
