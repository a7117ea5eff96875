import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Raised, raiseToSteps, type ToRaise } from './raise-to-steps.ts';

/** Goals, worth, and heights from the lowest: what an answer is judged by, in that order. */
function judged({ members, steps }: ToRaise, give: readonly number[]): number[] {
  const heights = members.map(({ height }, at) => height + (give[at] ?? 0));
  const goals = members.filter(({ goal }, at) => goal !== undefined && (heights[at] ?? 0) >= goal);
  let worth = 0;
  for (const height of heights) {
    for (const step of steps) if (step.height <= height) worth += step.worth;
  }
  return [goals.length, worth, ...heights.toSorted((a, b) => a - b)];
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, place) => value !== b[place]);
  return at !== -1 && (a[at] ?? 0) > (b[at] ?? 0);
}

/** The best of every way there is to give the pool. */
function byTryingAll(problem: ToRaise): number[] {
  const give = problem.members.map(() => 0);
  let best: number[] = [];
  const from = (at: number, left: number) => {
    if (at === give.length - 1) {
      give[at] = left;
      const found = judged(problem, give);
      if (best.length === 0 || isBetter(found, best)) best = found;
      return;
    }
    for (let units = 0; units <= left; units += 1) {
      give[at] = units;
      from(at + 1, left - units);
    }
  };
  from(0, problem.pool);
  return best;
}

const height = fc.integer({ min: 0, max: 14 });
const problems: fc.Arbitrary<ToRaise> = fc.record({
  pool: fc.integer({ min: 1, max: 8 }),
  members: fc.array(
    fc.oneof(fc.record({ height }), fc.record({ height, goal: fc.integer({ min: 0, max: 18 }) })),
    { minLength: 1, maxLength: 5 },
  ),
  steps: fc.array(
    fc.record({ height: fc.integer({ min: 0, max: 18 }), worth: fc.integer({ min: 0, max: 3 }) }),
    { maxLength: 4 },
  ),
});

function isBest(problem: ToRaise, { give, goals, worth }: Raised): boolean {
  const found = judged(problem, give);
  const sum = give.reduce((all, units) => all + units, 0);
  const isWhole = sum === problem.pool && give.every((units) => units >= 0);
  const isTold = found[0] === goals && found[1] === worth;
  return isWhole && isTold && !isBetter(byTryingAll(problem), found);
}

describe('raising to steps', () => {
  it('is the best of all there is: goals, then worth, then the lowest', () => {
    fc.assert(
      fc.property(problems, (problem) => isBest(problem, raiseToSteps(problem))),
      { numRuns: 600 },
    );
  });

  it('would be caught if it stopped after goals and steps and gave the rest to the first', () => {
    const careless = (problem: ToRaise): Raised => {
      const { give, goals, worth } = raiseToSteps(problem);
      const from = give.findLastIndex((units) => units > 0);
      const moved = give.map((units, at) => units - (at === from ? 1 : 0) + (at === 0 ? 1 : 0));
      return { give: moved, goals, worth };
    };
    const check = fc.check(
      fc.property(problems, (problem) => isBest(problem, careless(problem))),
      { numRuns: 600 },
    );
    expect(check.failed).toBe(true);
  });

  it('puts goals before worth: two small goals before one worthy step', () => {
    const raised = raiseToSteps({
      pool: 5,
      members: [{ height: 10 }, { height: 8, goal: 10 }, { height: 7, goal: 10 }],
      steps: [{ height: 15, worth: 1000 }],
    });
    expect(raised).toEqual({ give: [0, 2, 3], goals: 2, worth: 0 });
  });

  it.each([
    [
      [10, 5, 15, 0],
      [3, 0, 0, 0],
    ],
    [
      [15, 5, 10, 0],
      [0, 0, 3, 0],
    ],
  ])('of two equal steps from %j takes the one that lifts the lower', (heights, give) => {
    const members = heights.map((height) => ({ height }));
    const steps = [13, 18].map((height) => ({ height, worth: 1 }));
    expect(raiseToSteps({ pool: 3, members, steps }).give).toEqual(give);
  });

  it('gives what is left to the lowest, one after the other', () => {
    const members = [{ height: 4 }, { height: 1 }, { height: 2 }];
    expect(raiseToSteps({ pool: 4, members, steps: [] }).give).toEqual([0, 3, 1]);
  });

  it('takes a pool that reaches every mark many times over', () => {
    const members = [{ height: 0, goal: 9 }, { height: 3 }];
    const raised = raiseToSteps({ pool: 1_000_001, members, steps: [{ height: 5, worth: 1 }] });
    expect(raised).toEqual({ give: [500_002, 499_999], goals: 1, worth: 2 });
  });
});
