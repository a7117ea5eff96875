import { describe, expect, it } from 'vitest';
import { soldAtStall } from '../ledger/posting.ts';
import { testBook } from '../ledger/test-book.ts';
import { countDifference } from './count-difference.ts';
import { shareCheck } from './share-check.ts';
import { stallSettlement } from './stall-settlement.ts';

/** Lines that do not name the product `constructor`, which every object has all the same. */
const book = testBook({ constructor: 500, honey: 800 }, ['constructor']);

describe('a product with the id constructor', () => {
  it('that came back without going out is short by what came back', () => {
    const sheet = { out: { honey: 4 }, back: { constructor: 1 }, damaged: { constructor: 2 } };
    const money = { stall: 'quay', float: 0, cash: 0, cards: 0, cheques: 0 };
    const close = book.movement('stall-close', { ...sheet, ...money });
    expect(Object.entries(soldAtStall(close))).toEqual([
      ['honey', 4],
      ['constructor', -3],
    ]);
    const ledger = book.ledger([close]);
    expect(ledger.balances.moneyOf('goods')).toBe(-4 * 800 + 500);
    const settled = stallSettlement(ledger, { ...sheet, ...money, date: close.date });
    expect(settled.products[0]).toMatchObject({ out: 0, back: 1, damaged: 2, sold: -3 });
    const honeyOnly = { ...money, out: { honey: 4 }, back: {}, date: close.date };
    expect(stallSettlement(ledger, honeyOnly).should).toBe(3200);
  });

  it('that was not counted is not counted, and is moved by no other movement', () => {
    const delivery = book.movement('delivery', { lines: { constructor: 6, honey: 2 } });
    const count = book.movement('count', { lines: { honey: 2 } });
    const later = book.movement('delivery', { lines: { honey: 1 } });
    const ledger = book.ledger([delivery, count, later]);
    const [first] = countDifference(ledger, count).products;
    expect(first).toMatchObject({ product: 'constructor', book: 6, state: 'not-counted' });
    expect(JSON.stringify(first)).not.toContain(later.id);
  });

  it('that is given and not in the pool is too much', () => {
    const check = shareCheck({ honey: 1 }, { constructor: { constructor: 2, honey: 1 } });
    expect(check.tooMuch).toEqual(['constructor']);
    expect(Object.entries(check.totals)).toEqual([['constructor', 3]]);
  });
});
