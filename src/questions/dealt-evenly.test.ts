import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lines } from '../records/fields.ts';
import { dealtEvenly } from './dealt-evenly.ts';

describe('units dealt evenly', () => {
  it('goes on with the next seller where the last product stopped', () => {
    expect(dealtEvenly({ honey: 4, jam: 4 }, ['ada', 'ben', 'cai'])).toEqual({
      ada: { honey: 2, jam: 1 },
      ben: { honey: 1, jam: 2 },
      cai: { honey: 1, jam: 1 },
    });
  });

  it('gives nothing to nobody, and leaves out a product below one', () => {
    expect(dealtEvenly({ honey: 4 }, [])).toEqual({});
    expect(dealtEvenly({ honey: -2, jam: 0 }, ['ada'])).toEqual({ ada: {} });
  });
});

type Deal = (pool: Lines, sellers: readonly string[]) => Record<string, Lines>;

function holdsFor(deal: Deal): void {
  const pools = fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd'), fc.nat(200), {
    noNullPrototype: true,
  });
  fc.assert(
    fc.property(pools, fc.integer({ min: 1, max: 9 }), (pool, count) => {
      const sellers = Array.from({ length: count }, (_, at) => `s${at}`);
      const shares = deal(pool, sellers);
      for (const product in pool) {
        const units = sellers.map((seller) => shares[seller]?.[product] ?? 0);
        expect(units.reduce((sum, one) => sum + one, 0)).toBe(pool[product]);
        expect(Math.max(...units) - Math.min(...units)).toBeLessThanOrEqual(1);
      }
      const totals = sellers.map((seller) =>
        Object.values(shares[seller] ?? {}).reduce((sum, one) => sum + one, 0),
      );
      expect(Math.max(...totals) - Math.min(...totals)).toBeLessThanOrEqual(1);
    }),
    { seed: 11, numRuns: 300 },
  );
}

describe('the rule of dealing', () => {
  it('holds for any pool', () => holdsFor(dealtEvenly));

  it('is told apart from starting each product with the first seller', () => {
    const restarting: Deal = (pool, sellers) => {
      const shares: Record<string, Record<string, number>> = {};
      for (const product in pool) {
        const dealt = dealtEvenly({ [product]: pool[product] ?? 0 }, sellers);
        for (const seller of sellers) {
          shares[seller] = { ...shares[seller], ...dealt[seller] };
        }
      }
      return shares;
    };
    expect(() => holdsFor(restarting)).toThrow();
  });
});
