import { describe, expect, it } from 'vitest';
import type { BookRecord } from '../records/record.ts';
import type { BalancesByAccount } from './balances.ts';
import { FIRST_DAY, testBook } from './test-book.ts';

/**
 * What each kind posts, row by row as the book specification's section 4 has it, in figures worked
 * out by hand: honey costs 800, jam 650, so {honey 2, jam 1} is worth 2250.
 */
const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const lines = { honey: 2, jam: 1 };
const WORTH = 2250;

type Posted = { [L in keyof BalancesByAccount]?: BalancesByAccount[L] };

function expectPosted(records: readonly BookRecord[], posted: Posted): void {
  const empty = { stock: {}, money: {}, credit: {} };
  expect(book.ledger(records).balances.toAccounts()).toEqual({ ...empty, ...posted });
}

/** The same accounts for both products: 2 honey and 1 jam from one account to another. */
function moved(from: string, to: string): Record<string, Record<string, number>> {
  return { honey: { [from]: -2, [to]: 2 }, jam: { [from]: -1, [to]: 1 } };
}

describe('goods', () => {
  it('delivery', () => {
    expectPosted([book.movement('delivery', { lines })], {
      stock: moved('supplier', 'stockroom'),
      money: { goods: WORTH, supplier: -WORTH },
    });
  });

  it('swap in and swap out', () => {
    expectPosted([book.movement('swap-in', { neighbour: 'hill', lines })], {
      stock: moved('neighbour:hill', 'stockroom'),
      money: { goods: WORTH, supplier: -WORTH },
    });
    expectPosted([book.movement('swap-out', { neighbour: 'hill', lines })], {
      stock: moved('stockroom', 'neighbour:hill'),
      money: { goods: -WORTH, supplier: WORTH },
    });
  });

  it('goods out and goods back', () => {
    expectPosted([book.movement('handover', { seller: 'ada', lines })], {
      stock: moved('stockroom', 'seller:ada'),
      money: { goods: -WORTH, 'owed:ada': WORTH },
      credit: moved('issued', 'seller:ada'),
    });
    expectPosted([book.movement('return', { seller: 'ada', lines })], {
      stock: moved('seller:ada', 'stockroom'),
      money: { goods: WORTH, 'owed:ada': -WORTH },
      credit: moved('seller:ada', 'issued'),
    });
  });

  it('pass on, with what is owed and the credit', () => {
    expectPosted([book.movement('pass', { from: 'ada', to: 'ben', lines })], {
      stock: moved('seller:ada', 'seller:ben'),
      money: { 'owed:ada': -WORTH, 'owed:ben': WORTH },
      credit: moved('seller:ada', 'seller:ben'),
    });
  });

  it('found, and stock written off', () => {
    expectPosted([book.movement('found', { lines, reason: 'behind the shelf' })], {
      stock: moved('lost', 'stockroom'),
      money: { goods: WORTH, losses: -WORTH },
    });
    expectPosted([book.movement('loss', { lines, reason: 'crushed' })], {
      stock: moved('stockroom', 'lost'),
      money: { goods: -WORTH, losses: WORTH },
    });
  });

  it('orders, exchanges and counts move nothing', () => {
    expectPosted(
      [
        book.movement('order', { seller: 'ada', lines, paid: 500 }),
        book.movement('supply-order', { lines }),
        book.movement('exchange', { lines }),
        book.movement('count', { lines }),
      ],
      {},
    );
  });
});

describe('online orders and gift units', () => {
  const order = { order: 'O-1', lines, gifts: { jam: 2 }, paid: WORTH + 1300 };

  it('shipped, with a seller: the seller is ahead by the gifts until they are recorded', () => {
    expectPosted([book.movement('online', { ...order, seller: 'ada', sent: 'post' })], {
      money: { 'owed:ada': -1300, supplier: 1300 },
      credit: moved('issued', 'seller:ada'),
    });
  });

  it('shipped, without a seller', () => {
    expectPosted([book.movement('online', { ...order, sent: 'post' })], {
      money: { buyers: -1300, supplier: 1300 },
      credit: moved('issued', 'pool:post'),
    });
  });

  it('brought: paid now, goods and credit come with the goods out', () => {
    expectPosted([book.movement('online', { ...order, seller: 'ada', sent: 'hand' })], {
      money: { 'owed:ada': -3550, supplier: 3550 },
    });
    expectPosted([book.movement('online', { ...order, sent: 'hand' })], {
      money: { buyers: -3550, supplier: 3550 },
    });
  });

  it('gift units from the supplier and from the stockroom, with and without a seller', () => {
    expectPosted([book.movement('gift', { seller: 'ada', lines, from: 'supplier' })], {
      money: { 'owed:ada': WORTH, supplier: -WORTH },
      credit: moved('issued', 'seller:ada'),
    });
    expectPosted([book.movement('gift', { lines, from: 'supplier' })], {
      money: { buyers: WORTH, supplier: -WORTH },
      credit: moved('issued', 'pool:gift'),
    });
    expectPosted([book.movement('gift', { seller: 'ada', lines, from: 'stockroom' })], {
      stock: moved('stockroom', 'gifted'),
      money: { 'owed:ada': WORTH, goods: -WORTH },
      credit: moved('issued', 'seller:ada'),
    });
    expectPosted([book.movement('gift', { lines, from: 'stockroom' })], {
      stock: moved('stockroom', 'gifted'),
      money: { buyers: WORTH, goods: -WORTH },
      credit: moved('issued', 'pool:gift'),
    });
  });
});

describe('stalls', () => {
  it('close: what was sold, damaged, taken and paid out, and the rest short or over', () => {
    const close = book.movement('stall-close', {
      stall: 'quay',
      out: { honey: 5, jam: 3 },
      back: { honey: 2, jam: 2 },
      damaged: { honey: 1 },
      float: 1000,
      cash: 1500,
      cards: 700,
      cheques: 600,
      paidout: 400,
    });
    // Sold 2 honey and 1 jam, 2250; taken 500 cash, 700 cards, 600 cheques, 400 spent: 50 short.
    expectPosted([close], {
      stock: {
        honey: { 'stall-sold': 2, lost: 1, stockroom: -3 },
        jam: { 'stall-sold': 1, stockroom: -1 },
      },
      money: { cards: 700, cashbox: 1100, fees: 400, goods: -3050, losses: 800, overshort: 50 },
      credit: moved('issued', 'pool:stall:quay'),
    });
  });

  it('share-out', () => {
    const given = { ada: { honey: 2 }, ben: { jam: 1 } };
    expectPosted([book.movement('shareout', { pool: 'stall:quay', lines: given })], {
      credit: {
        honey: { 'pool:stall:quay': -2, 'seller:ada': 2 },
        jam: { 'pool:stall:quay': -1, 'seller:ben': 1 },
      },
    });
  });
});

describe('money', () => {
  const paid = book.movement('payment', { seller: 'ada', tender: 'cheque', cents: 900 });

  it('payments and refunds by tender', () => {
    for (const tender of ['cash', 'cheque', 'card'] as const) {
      const till = tender === 'card' ? 'cards' : 'cashbox';
      expectPosted([book.movement('payment', { seller: 'ada', tender, cents: 900 })], {
        money: { 'owed:ada': -900, [till]: 900 },
      });
      expectPosted([book.movement('refund', { seller: 'ada', tender, cents: 900 })], {
        money: { 'owed:ada': 900, [till]: -900 },
      });
    }
  });

  it('deposits, card takings, debits, fees and proceeds', () => {
    expectPosted([book.movement('deposit', { cents: 900 })], {
      money: { bank: 900, cashbox: -900 },
    });
    expectPosted([book.movement('card-settle', { cents: 880, fee: 20, to: 'bank' })], {
      money: { bank: 880, cards: -900, fees: 20 },
    });
    expectPosted([book.movement('card-settle', { cents: 880, fee: 20, to: 'supplier' })], {
      money: { cards: -900, fees: 20, supplier: 880 },
    });
    expectPosted([book.movement('debit', { cents: 900, announced: 900 })], {
      money: { bank: -900, supplier: 900 },
    });
    expectPosted([book.movement('bank-fee', { cents: 15 })], { money: { bank: -15, fees: 15 } });
    expectPosted([book.movement('settle', { proceeds: 700 })], {
      money: { proceeds: -700, supplier: 700 },
    });
  });

  it('a returned debit stands again, with its fee', () => {
    const debit = book.movement('debit', { cents: 900 });
    expectPosted([debit, book.movement('debit-returned', { debit: debit.id, fee: 30 })], {
      money: { bank: -30, fees: 30 },
    });
  });

  it('a bounced cheque goes back to the family, its fee to whoever bears it', () => {
    expectPosted([paid, book.movement('bounced', { payment: paid.id, fee: 30 })], {
      money: { bank: -930, cashbox: 900, fees: 30 },
    });
    expectPosted([paid, book.movement('bounced', { payment: paid.id, fee: 30, charge: true })], {
      money: { bank: -930, cashbox: 900, 'owed:ada': 30 },
    });
  });

  it('a bounce follows the payment through its edits; once removed, only its fee stays', () => {
    const edit = book.movement('payment', {
      seller: 'ada',
      tender: 'cheque',
      cents: 950,
      replaces: paid.id,
    });
    const bounced = book.movement('bounced', { payment: paid.id, fee: 30, charge: true });
    expectPosted([paid, bounced, edit], {
      money: { bank: -980, cashbox: 950, 'owed:ada': 30 },
    });
    expectPosted([paid, bounced, book.remove(paid.id)], { money: { bank: -30, fees: 30 } });
  });

  it('a debt given up', () => {
    expectPosted([book.movement('loss', { seller: 'ada', cents: 900, reason: 'moved away' })], {
      money: { losses: 900, 'owed:ada': -900 },
    });
  });
});

describe('a new price', () => {
  it('revalues what stands in the stockroom on its first day, and nothing else', () => {
    const dearer = book.setting('product', {
      product: 'honey',
      name: 'honey',
      price: 900,
      case: 12,
      from: '2027-02-10',
    });
    const delivery = book.movement('delivery', { lines: { honey: 10 } });
    const out = book.movement('handover', { seller: 'ada', lines: { honey: 4 } });
    const later = book.movement('handover', {
      seller: 'ben',
      lines: { honey: 1 },
      date: '2027-02-10',
    });
    const ledger = book.ledger([dearer, delivery, out, later]);
    expect(ledger.asOf(FIRST_DAY).moneyOf('goods')).toBe(6 * 800);
    expect(ledger.asOf('2027-02-09').moneyOf('losses')).toBe(0);
    expect(ledger.balances.moneyOf('goods')).toBe(5 * 900);
    expect(ledger.balances.moneyOf('losses')).toBe(-6 * 100);
    expect(ledger.balances.moneyOf('owed:ada')).toBe(4 * 800);
    expect(ledger.balances.moneyOf('owed:ben')).toBe(900);
    expect(ledger.balances.moneyOf('supplier')).toBe(-10 * 800);
  });
});
