import { describe, expect, it } from 'vitest';
import { type Option, OptionTable } from '../../src/solvers/raise/option-table.ts';
import knapsacks from './data/knapsack-cases.json' with { type: 'json' };

/**
 * The table behind the lift against published optima: the 0/1 knapsacks P01 to P07 of J. Burkardt's
 * data set (sources in data/knapsack-cases.json; P08 has a capacity of 6.4 million, for which the
 * table is not made), and multiple-choice knapsacks with the source beside each.
 */

function best(groups: readonly (readonly Option[])[], capacity: number): number {
  const table = OptionTable.empty(capacity).with(groups, capacity);
  return Math.max(...table.gains());
}

/** Taking the first so many of a pile: one group. */
function prefixes(pile: readonly number[]): Option[] {
  return [0, ...pile.keys()].map((_, cost) => ({
    cost,
    gain: pile.slice(0, cost).reduce((sum, coin) => sum + coin, 0),
  }));
}

describe('published optima', () => {
  it.each(knapsacks)('$id is worth $best', ({ weights, profits, capacity, best: optimum }) => {
    const groups = weights.map((cost, at) => [
      { cost: 0, gain: 0 },
      { cost, gain: profits[at] ?? 0 },
    ]);
    expect(best(groups, capacity)).toBe(optimum);
  });

  // LeetCode problem 2218, examples 1 and 2: coins from the tops of piles.
  it.each([
    [
      [
        [1, 100, 3],
        [7, 8, 9],
      ],
      2,
      101,
    ],
    [[[100], [100], [100], [100], [100], [100], [1, 1, 1, 1, 1, 1, 700]], 7, 706],
  ])('piles %j with %i coins are worth %i', (piles, coins, optimum) => {
    expect(best(piles.map(prefixes), coins)).toBe(optimum);
  });

  // R package adagio, knapsack, example 1 (Martello and Toth).
  it('adagio: items 1, 2, 3, 4 and 6 are worth 280', () => {
    const profits = [15, 100, 90, 60, 40, 15, 10, 1];
    const weights = [2, 20, 20, 30, 40, 30, 60, 10];
    const groups = weights.map((cost, at) => [
      { cost: 0, gain: 0 },
      { cost, gain: profits[at] ?? 0 },
    ]);
    const table = OptionTable.empty(102).with(groups, 102);
    const cost = table.gains().indexOf(280);
    expect(Math.max(...table.gains())).toBe(280);
    expect(table.chosenAt(cost).options).toEqual([1, 1, 1, 1, 0, 1, 0, 0]);
  });
});
