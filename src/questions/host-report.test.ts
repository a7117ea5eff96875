import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { hostReport } from './host-report.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada']);
const { movement, setting } = book;
const evening = setting('stall', {
  stall: 'evening',
  host: 'market',
  starts: '2027-03-05T22:30',
  ends: '2027-03-06T00:15',
  shifts: [{ seller: 'ada', from: '22:30', to: '23:30' }],
});
const close = (stall: string, date: string, out: Record<string, number>) =>
  movement('stall-close', {
    stall,
    date,
    out,
    back: { honey: 1 },
    float: 0,
    cash: 0,
    cards: 0,
    cheques: 0,
  });

describe('the report for a host shop', () => {
  const dearer = setting('product', {
    product: 'honey',
    name: 'honey',
    price: 900,
    case: 12,
    from: '2027-03-01',
  });
  const ledger = book.ledger([
    evening,
    dearer,
    close('quay', '2027-02-01', { honey: 4, jam: 2 }),
    close('evening', '2027-03-05', { honey: 3 }),
  ]);

  it('adds up stalls, minutes over midnight, units and value at the price of each day', () => {
    expect(hostReport(ledger, 'market')).toMatchObject({
      stalls: [
        { stall: 'quay', minutes: 180, settled: true, units: 5, value: 3 * 800 + 2 * 650 },
        { stall: 'evening', minutes: 105, settled: true, units: 2, value: 2 * 900 },
      ],
      products: [
        { product: 'honey', units: 5, value: 3 * 800 + 2 * 900 },
        { product: 'jam', units: 2, value: 1300 },
      ],
      minutes: 285,
      units: 7,
      value: 5500,
    });
  });

  it('names nobody who sells', () => {
    expect(JSON.stringify(hostReport(ledger, 'market'))).not.toContain('ada');
  });

  it('leaves a stall that was not counted out of the sums, and knows only its hosts', () => {
    const open = hostReport(book.ledger([evening]), 'market');
    expect(open).toMatchObject({ minutes: 0, units: 0, products: [] });
    expect(open?.stalls.map(({ settled }) => settled)).toEqual([false, false]);
    expect(hostReport(ledger, 'nobody')).toBe(undefined);
  });
});
