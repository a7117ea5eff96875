import { describe, expect, it } from 'vitest';
import { shareCheck } from './share-check.ts';

describe('a share-out by hand', () => {
  it('says what is left of each product, never netting one against another', () => {
    const check = shareCheck(
      { honey: 7, jam: 5 },
      { ada: { honey: 4, jam: 6 }, ben: { honey: 1 }, cai: {} },
    );
    expect(check.products).toEqual([
      { product: 'honey', pool: 7, given: 5, left: 2 },
      { product: 'jam', pool: 5, given: 6, left: -1 },
    ]);
    expect(check.totals).toEqual({ ada: 10, ben: 1, cai: 0 });
    expect([check.left, check.tooMuch]).toEqual([2, ['jam']]);
  });

  it('has nothing left when every unit is given', () => {
    expect(shareCheck({ honey: 2 }, { ada: { honey: 2 } }).left).toBe(0);
    expect(shareCheck({}, {}).products).toEqual([]);
  });
});
