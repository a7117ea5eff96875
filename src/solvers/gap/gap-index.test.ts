import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Effect, effectOf, sumOfEffects, timesBetween } from './effect.ts';
import { GapIndex } from './gap-index.ts';

/** What the index finds is held against trying every combination. */
type Candidate = readonly (readonly [place: number, amount: number])[];

const candidate: fc.Arbitrary<Candidate> = fc.uniqueArray(
  fc.tuple(fc.nat(4), fc.integer({ min: -6, max: 6 })),
  { maxLength: 3, minLength: 1, selector: ([place]) => place },
);
const candidates = fc.array(candidate, { minLength: 1, maxLength: 14 });

function indexOf(all: readonly Candidate[]): GapIndex<number> {
  const index = new GapIndex<number>();
  for (const [at, each] of all.entries()) index.add(effectOf(new Map(each)), 1, at);
  return index;
}

/** Different effects only: the index keeps candidates with one effect together. */
function effectsOf(all: readonly Candidate[]): Effect[] {
  const byText = new Map<string, Effect>();
  for (const each of all) {
    const effect = effectOf(new Map(each));
    if (effect.places.length > 0) byText.set(text(effect), effect);
  }
  return [...byText.values()];
}

const text = ({ places, amounts }: Effect): string => `${places} ${amounts}`;

function sumText(effects: readonly Effect[]): string {
  return text(sumOfEffects(effects.map((effect): [Effect, number] => [effect, 1])));
}

function counted(all: readonly Candidate[], difference: Effect): [number, number] {
  const effects = effectsOf(all);
  let [singles, pairs] = [0, 0];
  for (const [at, one] of effects.entries()) {
    if (text(one) === text(difference)) singles += 1;
    for (const other of effects.slice(at)) {
      if (sumText([one, other]) === text(difference)) pairs += 1;
    }
  }
  return [singles, pairs];
}

describe('candidates that add up to a difference', () => {
  it('are all found, and nothing else, one and two at a time', () => {
    fc.assert(
      fc.property(candidates, candidate, (all, wanted) => {
        const difference = effectOf(new Map(wanted));
        fc.pre(difference.places.length > 0);
        const index = indexOf(all);
        const [singles, pairs] = counted(all, difference);
        expect(index.single(difference) === undefined ? 0 : 1).toBe(singles);
        expect(index.pairs(difference)).toHaveLength(pairs);
      }),
    );
  });

  it('are found three at a time, where no two of them make nothing', () => {
    fc.assert(
      fc.property(fc.tuple(candidate, candidate, candidate), candidates, (three, others) => {
        const effects = three.map((each) => effectOf(new Map(each)));
        fc.pre(effects.every(({ places }) => places.length > 0));
        const texts = effects.map(text);
        const nothing = text(effectOf(new Map()));
        const leave = effects.map((_, at) => sumText(effects.filter((__, other) => other !== at)));
        fc.pre(!leave.includes(nothing) && new Set(texts).size === 3);
        const difference = sumOfEffects(effects.map((effect): [Effect, number] => [effect, 1]));
        fc.pre(difference.places.length > 0);
        const index = indexOf([...three, ...others]);
        const found = index.triples(difference, 100_000).map((triple) =>
          triple
            .map((each) => text(index.effectOf(each).effect))
            .sort()
            .join('|'),
        );
        expect(found).toContain([...texts].sort().join('|'));
      }),
    );
  });

  it('an index that adds places up would be caught: it finds what leaves a remainder', () => {
    const all: Candidate[] = [[[0, 5]], [[1, -5]], [[0, 2]]];
    const difference = effectOf(new Map([[0, 2]]));
    const netted = all.map((each): Candidate => [[0, each.reduce((sum, [, by]) => sum + by, 0)]]);
    const [singles, pairs] = counted(all, difference);
    expect([singles, pairs]).toEqual([1, 0]);
    expect(indexOf(all).pairs(difference)).toHaveLength(pairs);
    expect(indexOf([...netted, [[0, 7]]]).pairs(difference)).not.toHaveLength(pairs);
  });

  it('an effect is taken a whole number of times or not at all', () => {
    const unit = effectOf(
      new Map([
        [1, 2],
        [3, -4],
      ]),
    );
    expect(
      timesBetween(
        unit,
        effectOf(
          new Map([
            [1, -6],
            [3, 12],
          ]),
        ),
      ),
    ).toBe(-3);
    expect(
      timesBetween(
        unit,
        effectOf(
          new Map([
            [1, 3],
            [3, -6],
          ]),
        ),
      ),
    ).toBe(0);
    expect(
      timesBetween(
        unit,
        effectOf(
          new Map([
            [1, 2],
            [3, 4],
          ]),
        ),
      ),
    ).toBe(0);
    expect(timesBetween(unit, effectOf(new Map([[1, 2]])))).toBe(0);
  });
});

describe('fingerprints', () => {
  it('of a sum are the sum of the fingerprints, far beyond 32 bits too', () => {
    const wide = fc.array(
      fc.tuple(
        fc.nat(50),
        fc.maxSafeInteger().map((n) => Math.trunc(n / 4)),
      ),
    );
    fc.assert(
      fc.property(wide, wide, (a, b) => {
        const [one, other] = [effectOf(new Map(a)), effectOf(new Map(b))];
        const sum = sumOfEffects([
          [one, 1],
          [other, 1],
        ]);
        expect(sum.one).toBe((one.one + other.one) | 0);
        expect(sum.two).toBe((one.two + other.two) | 0);
      }),
    );
  });
});
