import { expect, test } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { LIKELY_MAX, likelySellers } from './likely-sellers.ts';

const honey = (units: number) => ({ lines: { honey: units } });

test('sellers with something to pay, bring back or fetch come by name with their sizes', () => {
  const book = testBook({ honey: 800 }, ['ada', 'ben', 'lea']);
  const ledger = book.ledger([
    book.movement('handover', { seller: 'lea', ...honey(2) }),
    book.movement('handover', { seller: 'ada', ...honey(1) }),
    book.movement('payment', { seller: 'ada', tender: 'cash', cents: 1000 }),
    book.movement('order', { seller: 'ben', ...honey(4) }),
    book.movement('order', { seller: 'ada', ...honey(1) }),
  ]);
  const sizes = (wanted: Parameters<typeof likelySellers>[1]) =>
    likelySellers(ledger, wanted).map(({ seller, size }) => [seller, size]);
  expect(sizes('due')).toEqual([['lea', 1600]]);
  expect(sizes('credit')).toEqual([['ada', 200]]);
  expect(sizes('goods')).toEqual([
    ['ada', 1],
    ['lea', 2],
  ]);
  expect(sizes('orders')).toEqual([['ben', 4]]);
});

test('of too many the largest are kept', () => {
  const sellers = Array.from({ length: LIKELY_MAX + 3 }, (_, at) => `s${10 + at}`);
  const book = testBook({ honey: 800 }, sellers);
  const taken = sellers.map((seller, at) =>
    book.movement('handover', { seller, ...honey(at + 1) }),
  );
  const likely = likelySellers(book.ledger(taken), 'due').map(({ seller }) => seller);
  expect(likely).toEqual(sellers.slice(3));
});
