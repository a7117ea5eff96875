import { describe, expect, it } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { notYetBanked, sumOfReceipts } from './not-yet-banked.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const cash = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 1600 });
const cheque = book.movement('payment', { seller: 'ben', tender: 'cheque', cents: 4000 });
const card = book.movement('payment', { seller: 'ben', tender: 'card', cents: 700 });
const stall = book.movement('stall-close', {
  stall: 'quay',
  out: { honey: 5 },
  back: {},
  float: 2000,
  cash: 5000,
  cards: 800,
  cheques: 200,
});

function waiting(records: readonly BookRecord[]): [id: string, cents: number][] {
  return notYetBanked(book.ledger(records)).map(({ record, cents }) => [record.id, cents]);
}

describe('what waits to be banked', () => {
  it('is cash and cheques of payments and stalls, less the float, and no card', () => {
    expect(waiting([cash, cheque, card, stall])).toEqual([
      [cash.id, 1600],
      [cheque.id, 4000],
      [stall.id, 3200],
    ]);
  });

  it('is not what a deposit names, also under the id of an earlier version', () => {
    const deposit = book.movement('deposit', { cents: 4000, items: [cheque.id] });
    const edit = book.movement('payment', {
      seller: 'ada',
      tender: 'cheque',
      cents: 4000,
      replaces: cheque.id,
    });
    expect(waiting([cash, cheque, edit, deposit])).toEqual([[cash.id, 1600]]);
  });

  it('comes back when the deposit is removed', () => {
    const deposit = book.movement('deposit', { cents: 1600, items: [cash.id] });
    expect(waiting([cash, deposit, book.remove(deposit.id)])).toEqual([[cash.id, 1600]]);
  });

  it('is less the oldest where a deposit names nothing', () => {
    const deposit = book.movement('deposit', { cents: 2000 });
    const later = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 300 });
    expect(waiting([cash, cheque, deposit, later])).toEqual([
      [cheque.id, 3600],
      [later.id, 300],
    ]);
  });

  it('is less what a family was paid back in cash', () => {
    const refund = book.movement('refund', { seller: 'ben', tender: 'cash', cents: 600 });
    expect(waiting([cash, cheque, refund])).toEqual([
      [cash.id, 1000],
      [cheque.id, 4000],
    ]);
  });

  it('adds up to the cash box in the demo season, day by day', () => {
    const records = demoSeason();
    const whole = Ledger.of(records);
    for (const day of new Set(whole.movements().map(({ date }) => date))) {
      const until = records.filter((record) => !('date' in record) || record.date <= day);
      const sum = sumOfReceipts(notYetBanked(Ledger.of(until)));
      expect([day, sum]).toEqual([day, Ledger.of(until).balances.moneyOf('cashbox')]);
    }
  });
});
