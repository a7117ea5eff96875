import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { shelfOrder } from './shelf-order.ts';

const book = testBook({ tea: 500 }, ['ada']);
const product = (id: string, storage: string, retired = false) =>
  book.setting('product', { product: id, name: id, price: 1, case: 6, storage, retired });

describe('products in shelf order', () => {
  const setup = [product('jam', 'B'), product('honey', 'A'), product('oats', 'A')];

  it('goes by where they are kept, then by name', () => {
    const ids = shelfOrder(book.ledger(setup)).map((one) => one.product);
    expect(ids).toEqual(['tea', 'honey', 'oats', 'jam']);
  });

  it('leaves a retired product out once none is in the stockroom', () => {
    const retired = [...setup, product('old', 'C', true)];
    const there = book.movement('delivery', { lines: { old: 3 } });
    const ids = (records: Parameters<typeof book.ledger>[0]) =>
      shelfOrder(book.ledger(records)).map((one) => one.product);
    expect(ids(retired)).not.toContain('old');
    expect(ids([...retired, there])).toContain('old');
  });
});
