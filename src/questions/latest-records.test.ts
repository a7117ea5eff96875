import { expect, test } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { latestRecords } from './latest-records.ts';

const book = testBook({ honey: 800 }, ['ada']);
const out = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });
const fee = book.movement('bank-fee', { cents: 100 });
const edited = book.movement('bank-fee', { cents: 200, replaces: fee.id });

test('the latest to arrive comes first, an edited record and set-up are left out', () => {
  const found = latestRecords(book.ledger([out, fee, edited]), 5);
  expect(found.map((record) => record.id)).toEqual([edited.id, out.id]);
});

test('a device whose clock is years behind has its last line on top', () => {
  const behind = book.movement('bank-fee', { cents: 5, at: '1970-01-01T00:00:00.000Z' });
  const ledger = book.ledger([out, fee]);
  ledger.add(behind);
  expect(latestRecords(ledger, 1)).toEqual([behind]);
});

test('a removal is a line that can be taken back', () => {
  const removal = book.remove(out.id);
  expect(latestRecords(book.ledger([out, fee, removal]), 5)).toEqual([removal, fee]);
});
