import { describe, expect, it } from 'vitest';
import { compareLifts, compareShares } from './compare-programmes.ts';
import { loadHighs } from './highs.ts';

/**
 * Share-outs and lifts against the integer-programming solver HiGHS: the same optimum, none worse.
 * tools/compare-programmes.ts does the same with 1,000 of each.
 */
const PROBLEMS = 100;
const highs = await loadHighs();

describe('the integer-programming solver', () => {
  it('finds no share-out nearer to the exact shares', () => {
    for (const { ours, theirs } of compareShares(highs, 20270402, PROBLEMS)) {
      expect(ours).toBe(theirs);
    }
  });

  it('finds no lift with more goals or worthier steps', () => {
    for (const { ours, theirs } of compareLifts(highs, 20270403, PROBLEMS)) {
      expect(ours).toBe(theirs);
    }
  });
});
