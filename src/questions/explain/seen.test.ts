import { describe, expect, it } from 'vitest';
import { FIRST_DAY, testBook } from '../../ledger/test-book.ts';
import { explain } from './explain.ts';
import { differenceOf } from './observation.ts';
import { inBook, observedIn, placeKind, type Seen } from './seen.ts';

const made = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const delivery = made.movement('delivery', { lines: { honey: 96, jam: 60 } });
const out = made.movement('handover', { seller: 'ada', lines: { honey: 21, jam: 2 } });
const paid = made.movement('payment', { seller: 'ada', tender: 'cash', cents: 5000 });
const ledger = made.ledger([delivery, out, paid]);

function off(...seen: Seen[]): object {
  return differenceOf(observedIn(ledger, seen, FIRST_DAY), ledger.balances);
}

describe('what somebody saw', () => {
  it('agrees where it says what the book says', () => {
    for (const place of ['stockroom', 'cashbox', 'bank', 'supplier', 'seller:ada']) {
      expect(off(inBook(ledger, place, FIRST_DAY))).toEqual({});
    }
    expect(inBook(ledger, 'seller:ada', FIRST_DAY)).toEqual({
      place: 'seller:ada',
      units: { honey: 21, jam: 2 },
      minor: 5000,
    });
  });

  it('takes products without a figure as they are in the book', () => {
    expect(off({ place: 'stockroom', units: { honey: 84 } })).toEqual({
      'stock:stockroom': { honey: 9 },
    });
  });

  it('makes of what a family took and paid what it has still to pay', () => {
    expect(off({ place: 'seller:ada', units: { honey: 12 } })).toEqual({
      'stock:seller:ada': { honey: -9 },
      'money:owed:ada': -7200,
    });
    expect(off({ place: 'seller:ada', units: {}, minor: 6000 })).toEqual({
      'money:owed:ada': -1000,
    });
  });

  it('says nothing of what is owed for goods whose price has changed', () => {
    const dearer = made.setting('product', {
      product: 'honey',
      name: 'honey',
      price: 850,
      case: 12,
      from: '2027-02-10',
    });
    const later = made.ledger([delivery, out, paid, dearer]);
    const seen = [{ place: 'seller:ada', units: { honey: 12 } }];
    expect(observedIn(later, seen, FIRST_DAY).map(({ account }) => account)).toEqual([
      'seller:ada',
    ]);
  });

  it('is explained from what the family says alone', () => {
    const seen = [{ place: 'seller:ada', units: { honey: 12 } }];
    const [first] = explain(ledger, observedIn(ledger, seen, FIRST_DAY)).explanations;
    expect(first?.edits).toEqual([
      { op: 'change', record: out.id, fields: { lines: { honey: 12, jam: 2 } } },
    ]);
  });

  it('knows only places that the book knows', () => {
    expect(placeKind(ledger, 'seller:nobody')).toBeUndefined();
    expect(placeKind(ledger, 'owed:ada')).toBeUndefined();
    expect(placeKind(ledger, 'neighbour:hill')).toBe('goods');
  });
});
