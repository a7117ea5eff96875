import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/base/seeded.ts';
import { testBook } from '../../src/ledger/test-book.ts';
import { matchBank } from '../../src/questions/match/match-bank.ts';
import { mostDisjoint, type Way } from '../../src/solvers/match/most-disjoint.ts';
import { sumsTo } from '../../src/solvers/match/sums-to.ts';
import { loadHighs } from './highs.ts';
import { matchProgramme, type ToExplain } from './match-programme.ts';

/**
 * Sets of whole numbers and all their subsets that add up to a target: J. Burkardt, SUBSET_SUM,
 * test output of the MATLAB version (github johannesgerer/jburkardt-m). Places count from 1.
 */
const sets = [
  ['P01', 53, [15, 22, 14, 26, 32, 9, 16, 8], ['1 2 7', '1 3 7 8', '2 3 6 8']],
  ['P02', 5842, [267, 493, 869, 961, 1000, 1153, 1246, 1598, 1766, 1922], ['3 4 5 7 9']],
  [
    'P03',
    2463098,
    [
      518533, 1037066, 2074132, 1648264, 796528, 1593056, 686112, 1372224, 244448, 488896, 977792,
      1955584, 1411168, 322336, 644672, 1289344, 78688, 157376, 314752, 629504, 1259008,
    ],
    ['2 5 20'],
  ],
  ['P04', 50, [41, 34, 21, 20, 8, 7, 7, 4, 3, 3], ['3 5 6 7 8 10', '3 5 6 7 8 9']],
  ['P05', 100, [81, 80, 43, 40, 30, 26, 12, 11, 9], ['2 8 9']],
  ['P06', 22, [1, 2, 4, 8, 16, 32], ['2 3 5']],
  ['P07', 50, [25, 27, 3, 12, 6, 15, 9, 30, 21, 19], ['1 5 10']],
] as const;

const book = testBook({ honey: 800 }, ['ada']);

function matched(target: number, numbers: readonly number[]) {
  const deposits = numbers.map((cents) => book.movement('deposit', { cents }));
  const line = { line: 1, date: '2027-02-03', cents: target, text: '' };
  return matchBank(book.ledger(deposits), { lines: [line] });
}

describe('published subset sums', () => {
  it.each(sets)('%s: all subsets that add up to %i', (_, target, numbers, wanted) => {
    const { sets: found } = sumsTo(numbers, target, { members: 21, found: 50 });
    const places = found.map((set) => set.map((at) => at + 1).join(' ')).toSorted();
    expect(places).toEqual(wanted);
  });

  it.each(sets.filter(([, , , wanted]) => wanted.length > 1))(
    '%s has several: a line of %i is left to a person',
    (_, target, numbers, wanted) => {
      const found = matched(target, numbers);
      expect(found.matched).toEqual([]);
      expect(found.choices[0]?.sets).toHaveLength(wanted.length);
    },
  );

  it.each(sets.filter(([, , , wanted]) => wanted.length === 1))(
    '%s has one: a line of %i is suggested, not sure',
    (_, target, numbers) => {
      expect(matched(target, numbers).matched).toMatchObject([{ sure: false }]);
    },
  );
});

/**
 * Which receipts make up which line, against the integer-programming solver HiGHS: the same number
 * of lines and of receipts. (Published assignment sets have general costs; pairs here are only ever
 * made by days, which run along a line, so they are held against every pairing beside the code.)
 */
describe('receipts of several lines', () => {
  const random = seeded(20270404);
  const problem = (): ToExplain => {
    const receipts = Array.from({ length: 12 }, (_, at) => ({
      day: at,
      cents: random.whole(1, 12),
    }));
    const lines = Array.from({ length: 6 }, (_, at) => ({
      day: 2 * at + 2,
      cents: random.whole(4, 30),
    }));
    return { receipts, lines, days: 5 };
  };

  it('are explained as well as by the solver', async () => {
    const highs = await loadHighs();
    for (let round = 0; round < 40; round += 1) {
      const of = problem();
      const { chosen } = mostDisjoint(waysOf(of));
      const receipts = chosen.flatMap(({ items }) => items).length;
      const optimum = highs.solve(matchProgramme(of), { mip_rel_gap: 0 }).ObjectiveValue;
      expect(chosen.length * (of.receipts.length + 1) - receipts).toBe(Math.round(optimum));
    }
  });
});

function waysOf({ lines, receipts, days }: ToExplain): Way[] {
  return lines.flatMap((line, at) => {
    const near = [...receipts.keys()].filter((place) => {
      const apart = line.day - (receipts[place]?.day ?? 0);
      return apart >= 0 && apart <= days;
    });
    const values = near.map((place) => receipts[place]?.cents ?? 0);
    const { sets } = sumsTo(values, line.cents, { members: 12, found: 1000 });
    return sets.map((set) => ({ line: at, items: set.map((place) => near[place] ?? 0) }));
  });
}
