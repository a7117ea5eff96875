import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { countDifference, countsLastFirst } from './count-difference.ts';

const book = testBook({ honey: 800, jam: 650, tea: 500 }, ['ada']);
const delivery = book.movement('delivery', { lines: { honey: 24, jam: 12 } });

describe('a count against the book', () => {
  it('is told product by product and never netted', () => {
    // Two of one product taken for another: the total agrees, neither product does.
    const count = book.movement('count', { lines: { honey: 22, jam: 14 } });
    const answer = countDifference(book.ledger([delivery, count]), count);
    expect(answer.agrees).toBe(false);
    expect([answer.short, answer.over, answer.most]).toEqual([2, 2, 2]);
    expect(answer.products.map((one) => [one.product, one.state, one.difference])).toEqual([
      ['honey', 'short', -2],
      ['jam', 'over', 2],
    ]);
  });

  it('agrees only when every product of the book was counted', () => {
    const part = book.movement('count', { lines: { honey: 24 } });
    const answer = countDifference(book.ledger([delivery, part]), part);
    expect(answer.products.map((one) => one.state)).toEqual(['agrees', 'not-counted']);
    expect(answer.most).toBe(0);
    expect(answer.agrees).toBe(false);
    const whole = book.movement('count', { lines: { honey: 24, jam: 12, tea: 0 } });
    expect(countDifference(book.ledger([delivery, whole]), whole).agrees).toBe(true);
  });

  it('takes the book as of the day of the count', () => {
    const count = book.movement('count', { lines: { honey: 24, jam: 12 } });
    const next = book.movement('handover', {
      seller: 'ada',
      lines: { honey: 5 },
      date: '2027-02-02',
    });
    const answer = countDifference(book.ledger([delivery, count, next]), count);
    expect(answer.agrees).toBe(true);
    expect(answer.movedAfter).toEqual([]);
  });

  it('names goods that moved on the same day and were written later', () => {
    const count = book.movement('count', { lines: { honey: 24, jam: 12 } });
    const out = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });
    const paid = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 800 });
    const answer = countDifference(book.ledger([delivery, count, out, paid]), count);
    expect(answer.movedAfter).toEqual([out.id]);
    expect(answer.products.map((one) => one.movedAfter)).toEqual([[out.id], []]);
  });

  it('lists counts last first', () => {
    const first = book.movement('count', { lines: {} });
    const second = book.movement('count', { lines: {}, date: '2027-02-03' });
    const counts = countsLastFirst(book.ledger([second, first]));
    expect(counts.map((count) => count.id)).toEqual([second.id, first.id]);
  });
});
