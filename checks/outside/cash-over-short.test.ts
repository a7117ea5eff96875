import { describe, expect, it } from 'vitest';
import { testBook } from '../../src/ledger/test-book.ts';

/**
 * Cash counts that were short or over, whole dollars. `over` is the published result: positive is
 * over (credit Cash Over and Short), negative is short (debit). Our account `overshort` counts a
 * shortage as positive, so it must be −over.
 */
interface Drawer {
  readonly fund: number;
  readonly cash: number;
  readonly cheques?: number;
  /** Sales by the register. */
  readonly sales?: number;
  /** Receipts for what was paid out of the fund. */
  readonly receipts?: readonly number[];
  readonly over: number;
}

/** OpenStax, Principles of Accounting, volume 1, section 8.4: worked example and exercises. */
const pettyCash: Readonly<Record<string, Drawer>> = {
  'worked example': { fund: 75, receipts: [30, 10, 5], cash: 25, over: -5 },
  'French, 5 June': { fund: 800, receipts: [37, 124, 270, 168, 149], cash: 48, over: -4 },
  'French, 14 June': { fund: 800, receipts: [18, 175, 50, 269, 59], cash: 220, over: -9 },
  'French, 23 June': { fund: 800, receipts: [251, 88, 63, 182, 203], cash: 20, over: 7 },
  'French, 30 June': { fund: 1000, receipts: [18, 175, 50, 269, 59], cash: 437, over: 8 },
  'Kellie, 5 July': { fund: 1200, receipts: [125, 368, 325, 99, 259], cash: 38, over: 14 },
  'Kellie, 14 July': { fund: 1200, receipts: [425, 95, 240, 299, 77], cash: 110, over: 46 },
  'Kellie, 23 July': { fund: 1200, receipts: [251, 188, 263, 182, 203], cash: 93, over: -20 },
  'Kellie, 30 July': { fund: 1000, receipts: [14, 75, 150, 121, 39], cash: 603, over: 2 },
  Hajun: { fund: 200, receipts: [25, 125, 35], cash: 18, over: 3 },
  Lavender: { fund: 250, receipts: [50, 80, 60], cash: 8, over: -52 },
};

const registers: Readonly<Record<string, Drawer>> = {
  // double-entry-bookkeeping.com, "Cash over journal entry": 1,614 counted, 200 fund, 1,400 rung
  // up.
  'double-entry-bookkeeping.com': { fund: 200, cash: 1614, sales: 1400, over: 14 },
  // College Accounting, 4th edition (McGraw-Hill), chapter 9, problem 1PB.
  'College Accounting, short': { fund: 0, cash: 1399, sales: 1400, over: -1 },
  'College Accounting, over': { fund: 0, cash: 1051, sales: 1050, over: 1 },
  // dwmbeancounter.com, daily cash summary of 11 January: sales 1,818 and tax 182.
  'dwmbeancounter.com': { fund: 100, cash: 1550, cheques: 550, sales: 2000, over: 0 },
};

/** The drawer as a stall's close: what was sold is units of one product at a dollar each. */
function overshortOf(drawer: Drawer): number {
  const book = testBook({ sale: 100 }, []);
  const paid = (drawer.receipts ?? []).reduce((sum, dollars) => sum + dollars, 0);
  const close = book.movement('stall-close', {
    stall: 'quay',
    out: { sale: drawer.sales ?? 0 },
    back: { sale: 0 },
    float: drawer.fund * 100,
    cash: drawer.cash * 100,
    cards: 0,
    cheques: (drawer.cheques ?? 0) * 100,
    paidout: paid * 100,
  });
  return book.ledger([close]).balances.moneyOf('overshort') / 100;
}

describe('short or over', () => {
  it.each(Object.entries({ ...pettyCash, ...registers }))('%s', (_name, drawer) => {
    expect(overshortOf(drawer) + drawer.over).toBe(0);
  });

  it('teeth: a count that is one dollar off is noticed', () => {
    const drawer = registers['dwmbeancounter.com'];
    expect(drawer === undefined ? 0 : overshortOf({ ...drawer, cash: drawer.cash - 1 })).toBe(1);
  });
});
