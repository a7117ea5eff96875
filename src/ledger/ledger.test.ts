import { describe, expect, it } from 'vitest';
import { testBook } from './test-book.ts';

describe('the worked example of the book specification, section 6 (invented figures)', () => {
  const book = testBook({ honey: 800, jam: 650 }, ['ada']);
  const ledger = book.ledger([
    book.movement('delivery', { lines: { honey: 24, jam: 12 } }),
    book.movement('handover', { seller: 'ada', lines: { honey: 5 } }),
    book.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000 }),
    book.movement('stall-close', {
      stall: 'quay',
      out: { honey: 10, jam: 6 },
      back: { honey: 3, jam: 1 },
      float: 2000,
      cash: 6500,
      cards: 4000,
      cheques: 0,
    }),
  ]);

  it('gives the balances it states', () => {
    expect(ledger.balances.toAccounts()).toEqual({
      stock: {
        honey: { 'seller:ada': 5, 'stall-sold': 7, stockroom: 12, supplier: -24 },
        jam: { 'stall-sold': 5, stockroom: 7, supplier: -12 },
      },
      money: {
        cards: 4000,
        cashbox: 7500,
        goods: 14150,
        overshort: 350,
        'owed:ada': 1000,
        supplier: -27000,
      },
      credit: {
        honey: { issued: -12, 'pool:stall:quay': 7, 'seller:ada': 5 },
        jam: { issued: -5, 'pool:stall:quay': 5 },
      },
    });
  });
});
