import { expect, it } from 'vitest';
import { Ledger } from '../../src/ledger/ledger.ts';
import { closingList } from '../../src/questions/closing-list.ts';
import { movementKinds, setupKinds } from '../../src/records/record.ts';
import { checkBook } from '../../src/rules/check-book.ts';
import { shortSeason } from './short-season.ts';

const records = shortSeason();
const ledger = Ledger.of(records);

it('has every kind of record', () => {
  const kinds = new Set<string>(records.map(({ kind }) => kind));
  expect([...movementKinds, ...setupKinds, 'void'].filter((kind) => !kinds.has(kind))).toEqual([]);
});

it('comes out even, without an error', () => {
  const open = closingList(ledger, '2027-03-07').items.filter(({ state }) => state === 'open');
  expect(open.map(({ item }) => item)).toEqual([]);
  const found = checkBook({ ledger, records, lines: records.map((_, at) => at + 2) }).inOrder();
  expect(found.filter(({ severity }) => severity === 'error')).toEqual([]);
  const { bank, fees = 0, losses = 0, proceeds = 0, ...rest } = ledger.balances.toAccounts().money;
  expect(rest).toEqual({});
  expect(bank).toBe(-proceeds - fees - losses);
});
