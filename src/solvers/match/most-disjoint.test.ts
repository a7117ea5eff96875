import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostDisjoint, openLines, type Packing, type Way } from './most-disjoint.ts';

const problems = fc.array(
  fc.record({
    line: fc.integer({ min: 0, max: 4 }),
    items: fc.uniqueArray(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 3 }),
  }),
  { maxLength: 9 },
);

function isDisjoint(ways: readonly Way[]): boolean {
  const lines = ways.map(({ line }) => line);
  const items = ways.flatMap((way) => way.items);
  return new Set(lines).size === lines.length && new Set(items).size === items.length;
}

/** Lines and items of the best packing, by looking at every set of ways. */
function everyPacking(ways: readonly Way[]): { readonly lines: number; readonly items: number } {
  let best = { lines: 0, items: 0 };
  for (let mask = 1; mask < 2 ** ways.length; mask += 1) {
    const chosen = ways.filter((_, at) => (mask >> at) & 1);
    if (!isDisjoint(chosen)) continue;
    const items = chosen.flatMap((way) => way.items).length;
    const isMore = chosen.length > best.lines;
    if (isMore || (chosen.length === best.lines && items < best.items)) {
      best = { lines: chosen.length, items };
    }
  }
  return best;
}

function packsBest(pack: (ways: readonly Way[]) => Packing): void {
  fc.assert(
    fc.property(problems, (ways) => {
      const { chosen } = pack(ways);
      const items = chosen.flatMap((way) => way.items).length;
      const best = everyPacking(ways);
      return isDisjoint(chosen) && chosen.length === best.lines && items === best.items;
    }),
    { seed: 3, numRuns: 400 },
  );
}

describe('ways that share nothing', () => {
  it('explain as many lines as can be, by as few items as can be', () => {
    packsBest(mostDisjoint);
  });

  it('teeth: taking the first that fits is caught', () => {
    const greedy = (ways: readonly Way[]): Packing => {
      const chosen: Way[] = [];
      for (const way of ways) if (isDisjoint([...chosen, way])) chosen.push(way);
      return { chosen, isExact: true };
    };
    expect(() => packsBest(greedy)).toThrow();
  });
});

describe('lines that could be explained in another way', () => {
  const way = (line: number, ...items: number[]): Way => ({ line, items });

  it('are told, also where the other way has more items', () => {
    expect([...openLines([way(1, 1, 2), way(1, 3, 4, 5)])]).toEqual([1]);
  });

  it('are none where another line needs the other way', () => {
    expect([...openLines([way(1, 1, 2), way(1, 3, 4), way(2, 3, 4)])]).toEqual([]);
  });

  it('are both where two lines could change places', () => {
    const ways = [way(1, 1, 2), way(1, 3, 4), way(2, 1, 2), way(2, 3, 4)];
    expect([...openLines(ways)].toSorted()).toEqual([1, 2]);
  });
});
