import { describe, expect, it } from 'vitest';
import { Balances } from '../../src/ledger/balances.ts';
import { testBook } from '../../src/ledger/test-book.ts';
import {
  adjusted,
  adjusting,
  closing,
  type Entry,
  journal,
  postClosing,
  type TrialBalance,
  unadjusted,
} from './printing-plus.fixture.ts';

/** OpenStax, Principles of Accounting, volume 1: the Printing Plus example, sections 3.5 to 5.2. */

function trialBalanceOf(entries: readonly Entry[]): TrialBalance {
  const balances = new Balances();
  for (const [, debit, dollars, credit] of entries) balances.money(dollars * 100, credit, debit);
  const accounts = Object.entries(balances.toAccounts().money);
  const side = (sign: 1 | -1) =>
    Object.fromEntries(
      accounts.flatMap(([account, minor]): [string, number][] =>
        minor * sign > 0 ? [[account, (minor * sign) / 100]] : [],
      ),
    );
  const [debit, credit] = [side(1), side(-1)];
  const total = Object.values(debit).reduce((sum, dollars) => sum + dollars, 0);
  expect(Object.values(credit).reduce((sum, dollars) => sum + dollars, 0)).toBe(total);
  return { debit, credit, total };
}

describe('Printing Plus, through moves between accounts', () => {
  it('gives the unadjusted trial balance, 34,000 on each side', () => {
    expect(trialBalanceOf(journal)).toEqual(unadjusted);
  });

  it('gives the adjusted trial balance, 35,715 on each side', () => {
    expect(trialBalanceOf([...journal, ...adjusting])).toEqual(adjusted);
  });

  it('gives the post-closing trial balance, 30,040, with what was closed at zero', () => {
    expect(trialBalanceOf([...journal, ...adjusting, ...closing])).toEqual(postClosing);
  });

  it('teeth: two digits of one entry the other way round are noticed', () => {
    const slipped = journal.map(([day, debit, dollars, credit]): Entry => {
      return [day, debit, dollars === 1_200 ? 2_100 : dollars, credit];
    });
    expect(trialBalanceOf(slipped)).not.toEqual(unadjusted);
  });
});

describe('Printing Plus, as far as records can say it', () => {
  it('leaves 1,200 to be paid by the customer and 500 owed to the supplier', () => {
    // Work done on account is goods out at a dollar a unit, a purchase on account a delivery.
    const book = testBook({ work: 100 }, ['customer']);
    const january = (day: number) => ({ date: `2027-01-${String(day).padStart(2, '0')}` });
    const { balances } = book.ledger([
      book.movement('delivery', { ...january(5), lines: { work: 3_500 } }),
      book.movement('handover', { ...january(10), seller: 'customer', lines: { work: 5_500 } }),
      book.movement('bank-fee', { ...january(12), cents: 30_000 }),
      book.movement('debit', { ...january(18), cents: 350_000 }),
      book.movement('payment', {
        ...january(23),
        seller: 'customer',
        tender: 'cash',
        cents: 550_000,
      }),
      book.movement('handover', { ...january(27), seller: 'customer', lines: { work: 1_200 } }),
      book.movement('delivery', { ...january(30), lines: { work: 500 } }),
    ]);
    expect(balances.moneyOf('owed:customer')).toBe(120_000);
    expect(balances.moneyOf('supplier')).toBe(-50_000);
    expect(balances.moneyOf('fees')).toBe(30_000);
  });
});
