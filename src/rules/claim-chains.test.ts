import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ClaimChains } from './claim-chains.ts';

const RECORDS = 12;

/** What each record claims, if it does: the place of another record, which may lead to a ring. */
const claimed = fc.array(fc.option(fc.nat(RECORDS - 1)), {
  minLength: RECORDS,
  maxLength: RECORDS,
});

/** The root of a record, found step by step; undefined in a ring. */
function rootOf(places: readonly (number | null)[], place: number): number | undefined {
  let step = place;
  for (let steps = 0; steps <= RECORDS; steps += 1) {
    const next = places[step] ?? null;
    if (next === null) return step;
    step = next;
  }
  return undefined;
}

describe('claims that hang together', () => {
  it('lead to their root, and each stands after the one that it is on', () => {
    fc.assert(
      fc.property(claimed, (places) => {
        const from = Int32Array.from([...places.keys()].filter((place) => places[place] !== null));
        const to = from.map((place) => places[place] ?? 0);
        const chains = ClaimChains.of(from, to);
        const roots = places.map((_, place) => rootOf(places, place));
        if (roots.includes(undefined)) {
          expect(chains).toBeUndefined();
          return;
        }
        expect(places.map((_, place) => chains?.rootOf(place))).toEqual(roots);
        const order = [...(chains?.inOrder ?? [])];
        expect([...order].sort((a, b) => a - b)).toEqual([...from.keys()]);
        for (const [at, claim] of order.entries()) {
          const before = from.indexOf(to[claim] ?? 0);
          if (before >= 0) expect(order.indexOf(before)).toBeLessThan(at);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('are none where nothing claims', () => {
    expect(ClaimChains.of(new Int32Array(), new Int32Array())?.rootOf(3)).toBe(3);
  });
});
