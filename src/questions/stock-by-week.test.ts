import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { type StockByWeek, stockByWeek } from './stock-by-week.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);

describe('stock by week', () => {
  it('works out an example: two deliveries, goods out and back, a count that moves nothing', () => {
    const first = book.movement('delivery', { date: '2027-02-02', lines: { honey: 24, jam: 12 } });
    const swap = book.movement('swap-in', {
      date: '2027-02-19',
      neighbour: 'hill',
      lines: { jam: 6 },
    });
    const answer = stockByWeek(
      book.ledger([
        first,
        book.movement('handover', { date: '2027-02-07', seller: 'ada', lines: { honey: 10 } }),
        book.movement('return', { date: '2027-02-15', seller: 'ada', lines: { honey: 3 } }),
        swap,
        book.movement('handover', { date: '2027-02-21', seller: 'ben', lines: { jam: 5 } }),
        book.movement('count', { date: '2027-03-10', lines: { honey: 17 } }),
      ]),
    );
    expect(answer).toEqual({
      delivered: 42,
      now: 30,
      weeks: [
        {
          from: '2027-02-01',
          to: '2027-02-07',
          delivered: 36,
          back: 0,
          out: 10,
          atEnd: 26,
          deliveries: [first.id],
        },
        {
          from: '2027-02-08',
          to: '2027-02-14',
          delivered: 0,
          back: 0,
          out: 0,
          atEnd: 26,
          deliveries: [],
        },
        {
          from: '2027-02-15',
          to: '2027-02-21',
          delivered: 6,
          back: 3,
          out: 5,
          atEnd: 30,
          deliveries: [swap.id],
        },
      ],
    });
  });

  it('of an empty book has no weeks', () => {
    expect(stockByWeek(book.ledger([]))).toEqual({ weeks: [], delivered: 0, now: 0 });
  });

  it('each week follows from the one before, and the last is the ledger’s own', () => {
    const move = fc.record({
      kind: fc.constantFrom('delivery', 'handover', 'return'),
      day: fc.integer({ min: 1, max: 28 }),
      units: fc.integer({ min: 1, max: 40 }),
    });
    const holds = (answer: StockByWeek, now: number) => {
      let before = 0;
      const follows = answer.weeks.every((week) => {
        const right = week.atEnd === before + week.delivered + week.back - week.out;
        before = week.atEnd;
        return right;
      });
      return follows && before === now;
    };
    fc.assert(
      fc.property(fc.array(move, { maxLength: 20 }), (moves) => {
        const ledger = book.ledger(
          moves.map(({ kind, day, units }) => {
            const date = `2027-02-${String(day).padStart(2, '0')}`;
            const lines = { honey: units };
            return kind === 'delivery'
              ? book.movement('delivery', { date, lines })
              : book.movement(kind === 'handover' ? 'handover' : 'return', {
                  date,
                  lines,
                  seller: 'ada',
                });
          }),
        );
        const now = ledger.balances.unitsOf('stock', 'stockroom');
        const answer = stockByWeek(ledger);
        expect(holds(answer, now)).toBe(true);
        // Teeth: a week that forgets its deliveries is caught.
        const wrong = answer.weeks.map((week) => ({ ...week, delivered: 0 }));
        expect(holds({ ...answer, weeks: wrong }, now)).toBe(answer.delivered === 0);
      }),
    );
  });
});
