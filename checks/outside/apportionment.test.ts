import { readFileSync } from 'node:fs';
import Fraction from 'fraction.js';
import hareNiemeyer from 'hare-niemeyer';
import sainteLague from 'sainte-lague';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/base/seeded.ts';
import { type DivisorMethod, divisorShares } from '../../src/solvers/share/divisor-shares.ts';
import { sharedTable } from '../../src/solvers/share/shared-table.ts';
import cases from './data/apportionment-cases.json' with { type: 'json' };

/**
 * One-dimensional shares against published figures: textbook and official cases with their sources
 * in data/apportionment-cases.json; the apportionments of the United States House after the nine
 * censuses of 1940 to 2020 (census.gov; by Huntington and Hill, at least one seat); and two
 * reference libraries, hare-niemeyer (largest remainder) and sainte-lague (Webster).
 */

const methods: readonly DivisorMethod[] = ['adams', 'dean', 'hill', 'webster', 'jefferson'];

/** Largest remainder by the very code that shares out pools: one column. */
function largestRemainder(votes: readonly number[], seats: number, least = 0) {
  const spare = seats - least * votes.length;
  const rows = votes.map((weight) => ({ weight, carried: new Fraction(0), locked: new Map() }));
  const table = sharedTable({ columns: [least === 0 ? seats : spare], rows });
  return { shares: table.cells.map(([units = 0]) => units + least), tied: table.tied };
}

describe('published apportionments', () => {
  it('are reached by the method that each names', () => {
    const told = cases.filter(({ method, minimum }) => method !== 'hamilton' || minimum === 0);
    for (const { id, method, votes, seats, minimum, expected } of told) {
      const divisor = methods.find((name) => name === method);
      const { shares } =
        divisor === undefined
          ? largestRemainder(votes, seats)
          : divisorShares(seats, votes, divisor, minimum);
      expect(shares, id).toEqual(expected);
    }
    expect(told.length).toBe(67);
  });

  it('include the paradoxes: one seat more in all, one fewer for the smallest', () => {
    const smallest = (seats: number) => largestRemainder([6, 6, 2], seats).shares.at(-1);
    expect([smallest(10), smallest(11)]).toEqual([2, 1]);
  });

  // Inputs of the tie tests of github martinlackner/apportionment and polettif/proporz.
  it.each([
    [[2, 1, 1, 2, 2], 2, true],
    [[11, 11, 11], 4, true],
    [[3, 7, 90], 50, true],
    [[10, 10, 0], 1, true],
    [[12, 12, 11, 12], 3, false],
    [[10, 10, 0], 2, false],
    [[14, 28, 7, 35], 12, false],
  ])('says of %j and %i whether the cut is a tie: %s', (votes, seats, tied) => {
    expect(largestRemainder(votes, seats).tied.length > 0).toBe(tied);
  });

  it('give the House of Representatives after nine censuses', () => {
    const url = new URL('./data/us-census-apportionment.csv', import.meta.url);
    const [, ...lines] = readFileSync(url, 'utf8').trim().split('\n');
    const byCensus = Map.groupBy(
      lines.map((line) => line.split(',')),
      ([census = '']) => census,
    );
    for (const [census, states] of byCensus) {
      const people = states.map(([, , population]) => Number(population));
      const seats = states.map(([, , , given]) => Number(given));
      expect(divisorShares(435, people, 'hill', 1).shares, census).toEqual(seats);
    }
    expect([...byCensus.keys()]).toHaveLength(9);
  });
});

describe('reference libraries', () => {
  it('agree on 10,000 random cases, wherever the cut is no tie', () => {
    const random = seeded(20270401);
    let compared = 0;
    for (let turn = 0; turn < 10_000; turn += 1) {
      const votes = Array.from({ length: random.whole(2, 12) }, () => random.whole(1, 900));
      const seats = random.whole(1, 300);
      const named = Object.fromEntries(votes.map((vote, at) => [`s${at}`, vote]));
      const ours = largestRemainder(votes, seats);
      const webster = divisorShares(seats, votes, 'webster');
      if (ours.tied.length === 0) {
        expect(ours.shares).toEqual(inOrder(hareNiemeyer(named, seats), votes.length));
        compared += 1;
      }
      if (webster.tied.length === 0) {
        expect(webster.shares).toEqual(inOrder(sainteLague(named, seats), votes.length));
      }
    }
    expect(compared).toBeGreaterThan(9000);
  });
});

function inOrder(found: Readonly<Record<string, number>>, length: number): number[] {
  return Array.from({ length }, (_, at) => found[`s${at}`] ?? 0);
}
