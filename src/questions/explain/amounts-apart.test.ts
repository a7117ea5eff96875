import { expect, it } from 'vitest';
import { FIRST_DAY, testBook } from '../../ledger/test-book.ts';
import { amountsApart, seenAgainstBook } from './amounts-apart.ts';
import { observedIn } from './seen.ts';

const made = testBook({ honey: 800, jam: 800 }, ['ada']);
const delivery = made.movement('delivery', { lines: { honey: 20, jam: 20 } });
const out = made.movement('handover', { seller: 'ada', lines: { honey: 5 } });

it('tells product from product where the units of both come to the same', () => {
  const before = made.ledger([delivery, out]);
  const other = { ...out, lines: { jam: 5 } };
  const apart = amountsApart(before.balances, made.ledger([delivery, other]).balances);
  const told = apart.filter(({ account }) => account === 'stockroom' || account === 'owed:ada');
  expect(told).toEqual([
    { ledger: 'stock', account: 'stockroom', product: 'honey', before: 15, after: 20 },
    { ledger: 'stock', account: 'stockroom', product: 'jam', before: 20, after: 15 },
  ]);
});

it('names money without a product', () => {
  const before = made.ledger([delivery, out]);
  const apart = amountsApart(before.balances, made.ledger([delivery]).balances);
  expect(apart.filter(({ ledger }) => ledger === 'money')).toContainEqual({
    ledger: 'money',
    account: 'owed:ada',
    product: '',
    before: 4000,
    after: 0,
  });
});

it('sets what was seen against the book, and leaves out what agrees', () => {
  const ledger = made.ledger([delivery, out]);
  const seen = observedIn(ledger, [{ place: 'stockroom', units: { honey: 12 } }], FIRST_DAY);
  expect(seenAgainstBook(seen, ledger.balances)).toEqual([
    { ledger: 'stock', account: 'stockroom', product: 'honey', before: 15, after: 12 },
  ]);
});
