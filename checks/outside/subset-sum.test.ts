import { expect, it } from 'vitest';
import { effectOf } from '../../src/solvers/gap/effect.ts';
import { GapIndex } from '../../src/solvers/gap/gap-index.ts';

/**
 * Sets of whole numbers and how many of their subsets add up to a target: J. Burkardt, SUBSET_SUM,
 * test output of the MATLAB version. Subsets of up to three members must be found, all of them;
 * where only larger ones exist, nothing may be.
 */
const sets = [
  ['P01', 53, [15, 22, 14, 26, 32, 9, 16, 8], ['15 22 16']],
  ['P02', 5842, [267, 493, 869, 961, 1000, 1153, 1246, 1598, 1766, 1922], []],
  [
    'P03',
    2463098,
    [
      518533, 1037066, 2074132, 1648264, 796528, 1593056, 686112, 1372224, 244448, 488896, 977792,
      1955584, 1411168, 322336, 644672, 1289344, 78688, 157376, 314752, 629504, 1259008,
    ],
    ['1037066 796528 629504'],
  ],
  ['P04', 50, [41, 34, 21, 20, 8, 7, 7, 4, 3, 3], []],
  ['P05', 100, [81, 80, 43, 40, 30, 26, 12, 11, 9], ['80 11 9']],
  ['P06', 22, [1, 2, 4, 8, 16, 32], ['2 4 16']],
  ['P07', 50, [25, 27, 3, 12, 6, 15, 9, 30, 21, 19], ['25 6 19']],
] as const;

it.each(sets)('%s: subsets that add up to %i', (_name, target, numbers, wanted) => {
  const index = new GapIndex<number>();
  const one = effectOf(new Map([[0, 1]]));
  for (const [at, number] of numbers.entries()) index.add(one, number, at);
  const difference = effectOf(new Map([[0, target]]));
  const found = [...index.pairs(difference), ...index.triples(difference, 1000)]
    // A class stands for all members with one number; each member may be taken once.
    .filter((classes) => new Set(classes).size === classes.length)
    .map((classes) =>
      classes
        .map((each) => index.itemsOf(each)[0] ?? -1)
        .sort((a, b) => a - b)
        .map((at) => numbers[at])
        .join(' '),
    );
  expect(found.sort()).toEqual([...wanted].sort());
});
