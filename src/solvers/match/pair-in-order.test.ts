import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairInOrder } from './pair-in-order.ts';

const days = fc
  .array(fc.integer({ min: 0, max: 25 }), { maxLength: 6 })
  .map((list) => list.toSorted((a, b) => a - b));

/** Most pairs and then least distance, by trying every pairing. */
function everyPairing(
  firsts: readonly number[],
  seconds: readonly number[],
  before: number,
  after: number,
): { readonly pairs: number; readonly apart: number } {
  const from = (at: number, used: number): { pairs: number; apart: number } => {
    if (at === firsts.length) return { pairs: 0, apart: 0 };
    let best = from(at + 1, used);
    for (const [place, second] of seconds.entries()) {
      const apart = second - (firsts[at] ?? 0);
      if ((used >> place) & 1 || apart < -before || apart > after) continue;
      const rest = from(at + 1, used | (1 << place));
      const found = { pairs: rest.pairs + 1, apart: rest.apart + Math.abs(apart) };
      const isMore = found.pairs > best.pairs;
      if (isMore || (found.pairs === best.pairs && found.apart < best.apart)) best = found;
    }
    return best;
  };
  return from(0, 0);
}

function pairsBest(pair: typeof pairInOrder): void {
  fc.assert(
    fc.property(days, days, (firsts, seconds) => {
      const found = pair(firsts, seconds, 3, 10);
      const apart = found.map(([a, b]) => Math.abs((seconds[b] ?? 0) - (firsts[a] ?? 0)));
      const total = apart.reduce((sum, each) => sum + each, 0);
      const best = everyPairing(firsts, seconds, 3, 10);
      return found.length === best.pairs && total === best.apart;
    }),
    { seed: 11, numRuns: 300 },
  );
}

describe('pairs of two sorted lists', () => {
  it('are as many as can be, and then as near as can be', () => {
    pairsBest(pairInOrder);
  });

  it('teeth: the nearest for each in turn is caught', () => {
    const nearest: typeof pairInOrder = (firsts, seconds, before, after) => {
      const used = new Set<number>();
      return firsts.flatMap((first, at) => {
        const free = [...seconds.keys()].filter((place) => {
          const apart = (seconds[place] ?? 0) - first;
          return !used.has(place) && apart >= -before && apart <= after;
        });
        free.sort(
          (a, b) => Math.abs((seconds[a] ?? 0) - first) - Math.abs((seconds[b] ?? 0) - first),
        );
        const [best] = free;
        if (best === undefined) return [];
        used.add(best);
        return [[at, best] as const];
      });
    };
    expect(() => pairsBest(nearest)).toThrow();
  });
});
