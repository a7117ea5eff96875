import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { bankingDayFrom, bankingDaysBefore, isBankingDay } from './banking-days.ts';
import { bankingRules, debitMornings, debitsNotAsAnnounced } from './debit-mornings.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const rules = bankingRules(book.ledger([]));
const season = book.setting('season', {
  name: 'Spring 2027',
  currency: 'USD',
  starts: '2027-02-01',
  ends: '2027-04-18',
  deadlines: [
    { deadline: 'debit-1', name: 'First debit', date: '2027-03-06', announced: 90_000 },
    { deadline: 'swaps', name: 'Last swaps', date: '2027-03-10' },
    { deadline: 'debit-2', name: 'Second debit', date: '2027-03-26' },
  ],
});

describe('banking days', () => {
  it.each([
    ['2027-03-05', true],
    ['2027-03-06', false],
    ['2027-03-07', false],
    ['2027-02-15', false],
    ['1999-12-31', true],
    ['1999-12-26', false],
  ])('%s: %s', (day, isOne) => {
    expect(isBankingDay(day, rules)).toBe(isOne);
  });

  it('are counted back over weekends and holidays, and forward to the next', () => {
    expect(bankingDaysBefore('2027-02-16', 1, rules)).toBe('2027-02-12');
    expect(bankingDaysBefore('2027-03-08', 5, rules)).toBe('2027-03-01');
    expect(bankingDayFrom('2027-03-06', rules)).toBe('2027-03-08');
  });
});

describe('the morning of a debit', () => {
  const goods = book.movement('handover', { seller: 'ada', lines: { honey: 100 } });
  const delivery = book.movement('delivery', { lines: { honey: 200 } });
  const paid = (cents: number, tender: 'cash' | 'cheque', date: string) =>
    book.movement('payment', { seller: 'ada', cents, tender, date });
  const early = paid(20_000, 'cheque', '2027-02-20');
  const late = paid(7000, 'cheque', '2027-03-02');
  const cash = paid(5000, 'cash', '2027-03-02');
  const waiting = paid(3000, 'cash', '2027-03-03');
  const records = [
    season,
    delivery,
    goods,
    early,
    late,
    cash,
    waiting,
    book.movement('deposit', { date: '2027-02-22', cents: 20_000, items: [early.id] }),
    book.movement('deposit', { date: '2027-03-03', cents: 12_000, items: [late.id, cash.id] }),
    book.movement('card-settle', { date: '2027-02-24', cents: 4000, fee: 0, to: 'bank' }),
    book.movement('card-settle', { date: '2027-03-05', cents: 6000, fee: 0, to: 'bank' }),
    book.movement('deposit', { date: '2027-03-08', cents: 9000, items: [] }),
  ];

  it('tells what is held, what of it is not safe, and what is missing', () => {
    const [first, second] = debitMornings(book.ledger(records), '2027-03-04');
    expect(first).toMatchObject({
      deadline: 'debit-1',
      takenOn: '2027-03-08',
      takes: 90_000,
      isAnnounced: true,
      holds: 42_000,
      cheques: 7000,
      cards: 6000,
      safe: 29_000,
      short: 61_000,
      notBanked: 3000,
      lastCashDay: '2027-03-05',
      lastChequeDay: '2027-03-01',
      couldPay: [{ family: 'home', owes: 45_000 }],
    });
    expect(second).toMatchObject({ deadline: 'debit-2', isAnnounced: false, takes: 160_000 });
  });

  it('is over once the debit is recorded or its day is past', () => {
    const taken = book.movement('debit', { date: '2027-03-08', cents: 90_000 });
    const of = (today: string, more: Parameters<typeof book.ledger>[0]) =>
      debitMornings(book.ledger([...records, ...more]), today).map(({ deadline }) => deadline);
    expect(of('2027-03-04', [taken])).toEqual(['debit-2']);
    expect(of('2027-03-20', [])).toEqual(['debit-2']);
  });

  it('goes by the bank’s own days where the season has them', () => {
    const { id: _id, at: _at, by: _by, ...said } = season;
    const own = book.setting('season', {
      ...said,
      banking: { holidays: ['2027-03-05'], cashDays: 2, chequeDays: 0 },
      replaces: season.id,
    });
    const [first] = debitMornings(book.ledger([...records, own]), '2027-03-04');
    expect(first).toMatchObject({ cheques: 0, lastCashDay: '2027-03-03' });
  });
});

describe('an amount that is not the one announced', () => {
  it('is raised from the record, or from the deadline near it', () => {
    const said = book.movement('debit', { date: '2027-02-10', cents: 500, announced: 400 });
    const near = book.movement('debit', { date: '2027-03-08', cents: 91_000 });
    const right = book.movement('debit', { date: '2027-03-26', cents: 100 });
    expect(debitsNotAsAnnounced(book.ledger([season, said, near, right]))).toEqual([
      { record: said.id, date: '2027-02-10', taken: 500, announced: 400 },
      { record: near.id, date: '2027-03-08', taken: 91_000, announced: 90_000 },
    ]);
  });
});
