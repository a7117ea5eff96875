import { expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { stallDifferences } from './stall-differences.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada']);
const stall = (id: string, day: string) =>
  book.setting('stall', {
    stall: id,
    host: 'market',
    starts: `${day}T09:00`,
    ends: `${day}T12:00`,
    shifts: [],
  });
const close = (id: string, date: string, cash: number) =>
  book.movement('stall-close', {
    stall: id,
    date,
    out: { honey: 10 },
    back: { honey: 3 },
    float: 2000,
    cash,
    cards: 0,
    cheques: 0,
  });

it('tells short and over apart and never sets one stall off against another', () => {
  // Sold 7 honey at 800 = 5600, so 7600 with the float agrees.
  const later = close('pier', '2027-02-20', 7400);
  const first = close('quay', '2027-02-01', 7850);
  const even = close('dune', '2027-02-27', 7600);
  const ledger = book.ledger([
    stall('pier', '2027-02-20'),
    stall('dune', '2027-02-27'),
    later,
    first,
    even,
  ]);
  const answer = stallDifferences(ledger, '2027-03-01');
  expect(answer.stalls.map(({ record, difference }) => [record, difference])).toEqual([
    [first.id, 250],
    [later.id, -200],
    [even.id, 0],
  ]);
  expect(answer).toMatchObject({ agreeing: 1, short: 200, over: 250, most: 250 });
  // The differences are what the postings took as short or over.
  expect(ledger.balances.moneyOf('overshort')).toBe(answer.short - answer.over);
});

it('of no settled stall there is none', () => {
  expect(stallDifferences(book.ledger([]), '2027-02-01')).toEqual({
    stalls: [],
    agreeing: 0,
    short: 0,
    over: 0,
    most: 0,
  });
});
