import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SumLimits, type Sums, sumsTo } from './sums-to.ts';

type Search = (values: readonly number[], target: number, limits: SumLimits) => Sums;

const ALL = { members: 12, found: 5000 };

/** Every set, by counting through all of them. */
function everySet(values: readonly number[], target: number): string[] {
  const found: string[] = [];
  for (let mask = 1; mask < 2 ** values.length; mask += 1) {
    const places = [...values.keys()].filter((at) => (mask >> at) & 1);
    const sum = places.reduce((total, at) => total + (values[at] ?? 0), 0);
    if (sum === target) found.push(places.join());
  }
  return found.sort();
}

const problems = fc.record({
  values: fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 10 }),
  target: fc.integer({ min: 1, max: 90 }),
});

function findsAll(search: Search): void {
  fc.assert(
    fc.property(problems, ({ values, target }) => {
      const { sets, isComplete } = search(values, target, ALL);
      const sizes = sets.map(({ length }) => length);
      return (
        isComplete &&
        sizes.every((size, at) => at === 0 || (sizes[at - 1] ?? 0) <= size) &&
        sets
          .map((set) => set.join())
          .toSorted()
          .join(' ') === everySet(values, target).join(' ')
      );
    }),
    { seed: 7, numRuns: 400 },
  );
}

describe('sets that add up', () => {
  it('are all found, the smallest first', () => {
    findsAll(sumsTo);
  });

  it('teeth: a search that leaves out its largest value is caught', () => {
    const lame: Search = (values, target, limits) =>
      sumsTo(
        values.map((value) => (value === Math.max(...values) ? target + 1 : value)),
        target,
        limits,
      );
    expect(() => findsAll(lame)).toThrow();
  });

  it('say when not every set was looked at', () => {
    const values = Array.from({ length: 40 }, (_, at) => 1000 + at * 37);
    expect(sumsTo(values, 7, { ...ALL, steps: 10 }).isComplete).toBe(true);
    expect(sumsTo(values, 9001, { ...ALL, steps: 100 }).isComplete).toBe(false);
  });
});
