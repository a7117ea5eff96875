import { expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { explainSeen } from './explain-seen.ts';

const made = testBook({ honey: 800 }, ['ada']);
const delivery = made.movement('delivery', { lines: { honey: 48 } });
const out = made.movement('handover', { seller: 'ada', lines: { honey: 21 }, slip: 'D014' });
const ledger = made.ledger([delivery, out]);
const DAY = '2027-03-01';

it('tells with each cause what it would write and change, as plain data', () => {
  const found = explainSeen(ledger, [{ place: 'stockroom', units: { honey: 36 } }], DAY);
  const stockroom = { ledger: 'stock', account: 'stockroom', product: 'honey' };
  expect(found.apart).toEqual([{ ...stockroom, before: 27, after: 36 }]);
  const [first] = found.causes;
  expect(first?.records).toEqual([
    { ...out, id: '', at: '', by: '', lines: { honey: 12 }, replaces: out.id },
  ]);
  expect(first?.apart).toContainEqual({ ...stockroom, before: 27, after: 36 });
  expect(first?.apart).toContainEqual({
    ledger: 'money',
    account: 'owed:ada',
    product: '',
    before: 16_800,
    after: 9600,
  });
  expect(first?.apart.map(({ account }) => account)).not.toContain('goods');
  expect(structuredClone(found)).toEqual(found);
});

it('has nothing to tell where all agrees', () => {
  const found = explainSeen(ledger, [{ place: 'stockroom', units: { honey: 27 } }], DAY);
  expect(found).toEqual({ apart: [], causes: [], unexplained: false });
});
