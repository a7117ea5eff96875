import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boundAt,
  cheapOptions,
  optionPrices,
  type PricedOption,
  type PricedProblem,
} from './option-prices.ts';
import { type Limits, type Option, OptionTable } from './option-table.ts';

type Groups = readonly (readonly Option[])[];

/** Nothing, and up to four dearer options that gain more, of which the last ones may count. */
const group: fc.Arbitrary<readonly PricedOption[]> = fc
  .record({
    rises: fc.array(fc.record({ cost: small(1, 6), gain: small(0, 9) }), { maxLength: 4 }),
    counting: small(0, 4),
  })
  .map(({ rises, counting }) => {
    const options: PricedOption[] = [{ cost: 0, gain: 0, count: 0 }];
    for (const rise of rises) {
      const { cost = 0, gain = 0 } = options.at(-1) ?? {};
      const count = options.length > counting ? 1 : 0;
      options.push({ cost: cost + rise.cost, gain: gain + rise.gain, count });
    }
    return options;
  });

const problems = fc.record({
  groups: fc.array(group, { minLength: 1, maxLength: 5 }),
  capacity: small(0, 30),
});

function small(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min, max });
}

/** Every answer there is within a capacity: the place of the option chosen in each group. */
function allAnswers(groups: readonly (readonly PricedOption[])[], capacity: number): number[][] {
  let answers: number[][] = [[]];
  for (const each of groups) {
    answers = answers.flatMap((answer) => [...each.keys()].map((place) => [...answer, place]));
  }
  return answers.filter((answer) => total(groups, answer, 'cost') <= capacity);
}

function total<K extends string>(
  groups: readonly (readonly Readonly<Record<K, number>>[])[],
  answer: readonly number[],
  key: K,
): number {
  return answer.reduce((sum, place, at) => sum + (groups[at]?.[place]?.[key] ?? 0), 0);
}

/** One that counts is worth more than all gains; half of what an option costs is wasted. */
function tableOptions(groups: readonly (readonly (PricedOption & { loss?: number })[])[]): Groups {
  return groups.map((each) =>
    each.map(({ cost, gain, count, loss = 0 }) => ({
      cost,
      gain: 1000 * count + gain,
      waste: Math.floor(cost / 2),
      loss,
    })),
  );
}

function bestOf(groups: Groups, limits: Limits) {
  return OptionTable.empty().with(groups, limits).best();
}

/** The greatest gain and its costs with the least waste, by trying all. */
function bestByTrying(groups: readonly (readonly PricedOption[])[], capacity: number) {
  const options = tableOptions(groups);
  const answers = allAnswers(groups, capacity);
  const gain = Math.max(...answers.map((answer) => total(options, answer, 'gain')));
  const gainful = answers.filter((answer) => total(options, answer, 'gain') === gain);
  const waste = Math.min(...gainful.map((answer) => total(options, answer, 'waste')));
  const best = gainful.filter((answer) => total(options, answer, 'waste') === waste);
  const costs = new Set(best.map((answer) => total(options, answer, 'cost')));
  return { best, gain, costs: [...costs].sort((a, b) => a - b) };
}

describe('the table of options', () => {
  it('tells the greatest gain, and every cost at which it wastes least', () => {
    fc.assert(
      fc.property(problems, ({ groups, capacity }) => {
        const { gain, costs } = bestByTrying(groups, capacity);
        expect(bestOf(tableOptions(groups), { capacity, spare: 0 })).toEqual({ gain, costs });
      }),
    );
  });

  it('would be caught if waste did not matter', () => {
    const check = fc.check(
      fc.property(problems, ({ groups, capacity }) => {
        const careless = tableOptions(groups).map((each) =>
          each.map((one) => ({ ...one, waste: 0 })),
        );
        const { costs } = bestByTrying(groups, capacity);
        expect(bestOf(careless, { capacity, spare: 0 }).costs).toEqual(costs);
      }),
    );
    expect(check.failed).toBe(true);
  });

  it('settles equal answers by what is told to be better', () => {
    const byFirst = (a: readonly number[], b: readonly number[]) => {
      const at = a.findIndex((place, group) => place !== b[group]);
      return at === -1 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
    };
    fc.assert(
      fc.property(problems, ({ groups, capacity }) => {
        const { best, costs } = bestByTrying(groups, capacity);
        const table = OptionTable.empty().with(tableOptions(groups), { capacity, spare: 0 });
        for (const { cost, options } of table.betterAt(costs, byFirst)) {
          const equal = best.filter((answer) => total(groups, answer, 'cost') === cost);
          expect(options).toEqual(equal.sort(byFirst).at(-1));
        }
      }),
    );
  });
});

describe('prices of options', () => {
  interface Priced {
    readonly problem: PricedProblem;
    readonly counting: readonly number[][];
  }

  /** As many count as can, and all answers in which so many do. */
  const priced: fc.Arbitrary<Priced> = problems.map(({ groups, capacity }) => {
    const answers = allAnswers(groups, capacity);
    const count = Math.max(...answers.map((answer) => total(groups, answer, 'count')));
    const counting = answers.filter((answer) => total(groups, answer, 'count') === count);
    return { problem: { groups, capacity, count }, counting };
  });

  it('bound every answer, and tell no option or answer to lose more than it does', () => {
    fc.assert(
      fc.property(priced, ({ problem, counting }) => {
        const { bound, losses, blur } = boundAt(problem, optionPrices(problem));
        const options = cheapOptions(problem.groups, losses, Number.POSITIVE_INFINITY);
        for (const answer of counting) {
          const gain = total(options, answer, 'gain');
          expect(gain + total(options, answer, 'loss')).toBeLessThanOrEqual(bound + blur);
        }
      }),
    );
  });

  it('leave every best answer in a table where just as much is to spare', () => {
    fc.assert(fc.property(priced, (each) => isBestKept(each, 0)));
  });

  it('would be caught if less were to spare', () => {
    expect(fc.check(fc.property(priced, (each) => isBestKept(each, -1))).failed).toBe(true);
  });

  function isBestKept({ problem, counting }: Priced, more: number): boolean {
    const { groups, capacity } = problem;
    const { bound, losses, blur } = boundAt(problem, optionPrices(problem));
    const gain = Math.max(...counting.map((answer) => total(groups, answer, 'gain')));
    const spare = bound - gain + blur + more;
    const kept = bestOf(tableOptions(cheapOptions(groups, losses, spare)), { capacity, spare });
    const all = bestByTrying(groups, capacity);
    return kept.gain === all.gain && String(kept.costs) === String(all.costs);
  }
});
