import { expect, it } from 'vitest';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import { howFar } from './first-steps.ts';

const book = testBook({ honey: 800 }, ['ada']);
const delivery = book.movement('delivery', { lines: { honey: 12 } });

it('names the next step of a new book, and ends once goods have gone out', () => {
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 1 } });
  const [season] = book.setup;
  expect(howFar(Ledger.of([])).next).toBe('season');
  expect(howFar(Ledger.of(season === undefined ? [] : [season])).next).toBe('products');
  expect(howFar(book.ledger([])).next).toBe('delivery');
  expect(howFar(book.ledger([delivery])).next).toBe('goods-out');
  expect(howFar(book.ledger([delivery, out])).next).toBeUndefined();
});

it('is over for a book that began without one of the steps', () => {
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 1 } });
  const answer = howFar(book.ledger([out]));
  expect(answer.next).toBeUndefined();
  expect(answer.steps.find(({ step }) => step === 'delivery')?.done).toBe(false);
});
