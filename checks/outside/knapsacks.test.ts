import { describe, expect, it } from 'vitest';
import { type Option, OptionTable } from '../../src/solvers/raise/option-table.ts';
import { raiseToSteps, type ToRaise } from '../../src/solvers/raise/raise-to-steps.ts';
import knapsacks from './data/knapsack-cases.json' with { type: 'json' };

/**
 * The table behind the lift, and the lift itself, against published optima: the 0/1 knapsacks P01
 * to P08 of J. Burkardt's data set (sources in data/knapsack-cases.json), and multiple-choice
 * knapsacks with the source beside each.
 */

function option(cost: number, gain: number): Option {
  return { cost, gain, waste: 0, loss: 0 };
}

/** Without a bound: what is to spare does not matter where nothing is lost. */
function tableOf(groups: readonly (readonly Option[])[], capacity: number): OptionTable {
  return OptionTable.empty().with(groups, { capacity, spare: 0 });
}

function items(weights: readonly number[], profits: readonly number[]): Option[][] {
  return weights.map((cost, at) => [option(0, 0), option(cost, profits[at] ?? 0)]);
}

/** Taking the first so many of a pile: one group. */
function prefixes(pile: readonly number[]): Option[] {
  const gainOf = (coins: number) => pile.slice(0, coins).reduce((sum, coin) => sum + coin, 0);
  return [0, ...pile.keys()].map((_, coins) => option(coins, gainOf(coins)));
}

/**
 * A knapsack as a lift: for every item a member who stands its weight below a step worth its
 * profit, and so far from all other steps that the pool reaches none of them.
 */
function asLift({ weights, profits, capacity }: (typeof knapsacks)[number]): ToRaise {
  const steps = profits.map((worth, at) => ({ height: 2 * capacity * (at + 1), worth }));
  const members = weights.map((weight, at) => ({ height: 2 * capacity * (at + 1) - weight }));
  return { pool: capacity, members, steps };
}

describe('published optima', () => {
  it.each(knapsacks)('$id is worth $best', ({ weights, profits, capacity, best }) => {
    expect(tableOf(items(weights, profits), capacity).best().gain).toBe(best);
  });

  it.each(knapsacks)('$id as a lift adds steps worth $best', (knapsack) => {
    const stoodAt = knapsack.profits.reduce((sum, profit, at, { length }) => {
      return sum + profit * (length - 1 - at);
    }, 0);
    expect(raiseToSteps(asLift(knapsack)).worth - stoodAt).toBe(knapsack.best);
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
    expect(tableOf(piles.map(prefixes), coins).best().gain).toBe(optimum);
  });

  // R package adagio, knapsack, example 1 (Martello and Toth).
  it('adagio: items 1, 2, 3, 4 and 6 are worth 280', () => {
    const profits = [15, 100, 90, 60, 40, 15, 10, 1];
    const weights = [2, 20, 20, 30, 40, 30, 60, 10];
    const table = tableOf(items(weights, profits), 102);
    const { gain, costs } = table.best();
    expect(gain).toBe(280);
    expect(costs).toEqual([102]);
    expect(table.chosenAt(102).options).toEqual([1, 1, 1, 1, 0, 1, 0, 0]);
  });
});
