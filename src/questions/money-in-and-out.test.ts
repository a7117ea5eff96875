import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { type MoneyInAndOut, moneyInAndOut } from './money-in-and-out.ts';

const book = testBook({ honey: 800 }, ['ada']);
const season = book.setting('season', {
  name: 'Spring 2027',
  currency: 'USD',
  starts: '2027-02-01',
  ends: '2027-04-18',
  deadlines: [{ deadline: 'debit-2', name: 'Second debit', date: '2027-02-26', announced: 9000 }],
});

describe('money in and out by week', () => {
  it('works out an example with a debit taken, a fee and a debit to come', () => {
    const ledger = book.ledger([
      season,
      book.movement('payment', { seller: 'ada', tender: 'cash', cents: 20_000 }),
      book.movement('deposit', { date: '2027-02-03', cents: 20_000 }),
      book.movement('debit', { date: '2027-02-05', cents: 12_000 }),
      book.movement('bank-fee', { date: '2027-02-12', cents: 350 }),
    ]);
    expect(moneyInAndOut(ledger, '2027-02-12')).toEqual({
      paidIn: 20_000,
      debited: 12_000,
      otherOut: 350,
      announced: 9000,
      now: 7650,
      weeks: [
        {
          from: '2027-02-01',
          to: '2027-02-07',
          paidIn: 20_000,
          debited: 12_000,
          otherOut: 0,
          paidOut: 12_000,
          atEnd: 8000,
          announced: 0,
        },
        {
          from: '2027-02-08',
          to: '2027-02-14',
          paidIn: 0,
          debited: 0,
          otherOut: 350,
          paidOut: 350,
          atEnd: 7650,
          announced: 0,
        },
        {
          from: '2027-02-15',
          to: '2027-02-21',
          paidIn: 0,
          debited: 0,
          otherOut: 0,
          paidOut: 0,
          atEnd: 7650,
          announced: 0,
        },
        {
          from: '2027-02-22',
          to: '2027-02-28',
          paidIn: 0,
          debited: 0,
          otherOut: 0,
          paidOut: 0,
          atEnd: 7650,
          announced: 9000,
        },
      ],
    });
  });

  it('counts a debit that came back as money in, less the fee', () => {
    const debit = book.movement('debit', { date: '2027-02-05', cents: 5000 });
    const returned = book.movement('debit-returned', {
      date: '2027-02-08',
      debit: debit.id,
      fee: 700,
    });
    expect(moneyInAndOut(book.ledger([debit, returned]), '2027-02-10')).toMatchObject({
      paidIn: 4300,
      debited: 5000,
      now: -700,
    });
  });

  it('adds up to the account, whatever happened', () => {
    const move = fc.record({
      kind: fc.constantFrom('deposit', 'debit', 'bank-fee'),
      day: fc.integer({ min: 1, max: 28 }),
      cents: fc.integer({ min: 1, max: 90_000 }),
    });
    const agrees = (all: MoneyInAndOut, bank: number) =>
      all.paidIn - all.debited - all.otherOut === bank && (all.weeks.at(-1)?.atEnd ?? 0) === bank;
    fc.assert(
      fc.property(fc.array(move, { maxLength: 20 }), (moves) => {
        const ledger = book.ledger(
          moves.map(({ kind, day, cents }) => {
            const date = `2027-02-${String(day).padStart(2, '0')}`;
            if (kind === 'deposit') return book.movement('deposit', { date, cents });
            if (kind === 'debit') return book.movement('debit', { date, cents });
            return book.movement('bank-fee', { date, cents });
          }),
        );
        const all = moneyInAndOut(ledger, '2027-03-01');
        const bank = ledger.balances.moneyOf('bank');
        expect(agrees(all, bank)).toBe(true);
        // Teeth: fees that were left out are caught.
        expect(agrees({ ...all, otherOut: 0 }, bank)).toBe(all.otherOut === 0);
      }),
    );
  });
});
