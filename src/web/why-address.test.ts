import { expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import type { ClosingItem } from '../questions/closing/closing-item.ts';
import { seenPlaceOf, whyFamily, whyItem, whyStall } from './why-address.ts';

it('asks about every seller of a family', () => {
  const { setup } = testBook({}, ['ada', 'ben']).ledger([]);
  expect(whyFamily(setup, 'home')).toBe('/why?about=seller%3Aada&about=seller%3Aben');
});

it('asks about a stall as if its money agreed', () => {
  expect(whyStall('quay')).toBe('/why?about=stall:quay&stall:quay=0');
});

it('knows which accounts somebody can look at', () => {
  const places = [
    ['money', 'owed:ada'],
    ['money', 'bank'],
    ['money', 'goods'],
    ['stock', 'neighbour:hill'],
    ['stock', 'lost'],
    ['credit', 'seller:ada'],
  ] as const;
  expect(places.map(([ledger, account]) => seenPlaceOf(ledger, account))).toEqual([
    'seller:ada',
    'bank',
    undefined,
    'neighbour:hill',
    undefined,
    undefined,
  ]);
});

it('leads from items of the closing list that do not agree, and from no others', () => {
  const item = (cause: ClosingItem['cause']): ClosingItem => ({
    item: 'owed:ada',
    group: 'families',
    state: 'open',
    left: {},
    records: ['first', 'count'],
    next: 'nothing',
    ...(cause && { cause }),
  });
  const credit = { kind: 'family_in_credit', waiting: 0, gifts: 0, paidTooMuch: 1 } as const;
  expect(whyItem(item({ kind: 'count_differs', counted: '2027-02-01' }))).toBe('/why?count=count');
  expect(whyItem(item(credit))).toBe('/why?about=seller%3Aada');
  expect(whyItem(item({ kind: 'not_settled' }))).toBeUndefined();
});
