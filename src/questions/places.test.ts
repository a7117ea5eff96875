import { expect, test } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import { accountsOf, placeIds, places } from './places.ts';
import { runningBalance } from './running-balance.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada']);

// The worked example of the book specification, section 6.
const example = book.ledger([
  book.movement('delivery', { lines: { honey: 24, jam: 12 } }),
  book.movement('handover', { seller: 'ada', lines: { honey: 5 } }),
  book.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000 }),
  book.movement('stall-close', {
    stall: 'quay',
    out: { honey: 10, jam: 6 },
    back: { honey: 3, jam: 1 },
    float: 2000,
    cash: 6500,
    cards: 4000,
    cheques: 0,
  }),
]);

test('says where the units and the money of the worked example are', () => {
  const { units, places: all } = places(example);
  expect(units).toMatchObject({ delivered: 36, in: 36, accounted: 36 });
  const at = Object.fromEntries(all.map((place) => [place.place, [place.units, place.minor]]));
  expect(at).toMatchObject({
    stockroom: [19, 14150],
    families: [5, 1000],
    stalls: [12, 350],
    cashbox: [undefined, 7500],
    cards: [undefined, 4000],
    supplier: [36, 27000],
  });
});

test('what is owed is matched by where it is, both sides in positive amounts', () => {
  const { money } = places(example);
  expect(money.owedParts).toEqual([{ part: 'supplier', amount: 27000 }]);
  expect(money).toMatchObject({ owed: 27000, accounted: 27000 });
  expect(money.parts).toContainEqual({ part: 'overshort', amount: 350 });
});

test('swaps count on the side they came from', () => {
  const swapped = book.ledger([
    book.movement('delivery', { lines: { honey: 24 } }),
    book.movement('swap-in', { neighbour: 'hill', lines: { jam: 12 } }),
    book.movement('swap-out', { neighbour: 'hill', lines: { honey: 6 } }),
  ]);
  expect(places(swapped).units).toMatchObject({ in: 36, accounted: 36, swappedIn: 12 });
  const neighbours = places(swapped).places.find(({ place }) => place === 'neighbours');
  expect(neighbours).toMatchObject({ units: 6, unitsFrom: 12 });
});

test('a family in credit is told apart from those still to pay', () => {
  const paid = book.movement('payment', { seller: 'ada', tender: 'card', cents: 500 });
  const families = places(book.ledger([paid])).places.find(({ place }) => place === 'families');
  expect(families).toMatchObject({ minor: 0, against: 500 });
});

test('a place that gave out more than came in says so', () => {
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 1 } });
  const stockroom = places(book.ledger([out])).places.find(({ place }) => place === 'stockroom');
  expect(stockroom).toMatchObject({ units: -1, negative: true });
});

test('both proofs hold for the demo season, and each place’s list ends at its figures', () => {
  const ledger = Ledger.of(demoSeason());
  const { units, money, places: all } = places(ledger);
  expect(units.accounted).toBe(units.in);
  expect(money.accounted).toBe(money.owed);
  expect(all.map(({ place }) => place)).toEqual([...placeIds]);
  const families = accountsOf('families');
  const owed = runningBalance(ledger, {
    ledger: 'money',
    accounts: families.money ?? (() => false),
  });
  const shown = all.find(({ place }) => place === 'families');
  expect(owed.balance).toBe((shown?.minor ?? 0) - (shown?.against ?? 0));
});
