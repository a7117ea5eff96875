import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { makeSeason } from '../../simulation/season-maker.ts';
import { Ledger } from '../ledger/ledger.ts';
import { FIRST_DAY, testBook } from '../ledger/test-book.ts';
import { type RunningBalance, runningBalance } from './running-balance.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);

function followed(ledger: Ledger, name: 'stock' | 'money' | 'credit', account: string) {
  return runningBalance(ledger, { ledger: name, accounts: (other) => other === account });
}

/** Every account of every ledger: does its running list end at the ledger's own balance? */
function wrongAccounts(ledger: Ledger, question = followed): string[] {
  const wrong: string[] = [];
  for (const name of ['stock', 'money', 'credit'] as const) {
    for (const account of ledger.balances.table(name).keys()) {
      const own =
        name === 'money'
          ? ledger.balances.moneyOf(account)
          : ledger.balances.unitsOf(name, account);
      const { lines, balance } = question(ledger, name, account);
      const adds = lines.every(
        (line, at) => line.balance - line.amount === (lines[at - 1]?.balance ?? 0),
      );
      if (balance !== own || !adds) wrong.push(`${name}:${account}`);
    }
  }
  return wrong;
}

test('each line shows the balance after it, in the order things happened', () => {
  const later = book.movement('return', { seller: 'ada', lines: { honey: 2 }, date: '2027-02-09' });
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 5, jam: 1 } });
  const paid = book.movement('payment', {
    seller: 'ada',
    tender: 'cash',
    cents: 3000,
    date: '2027-02-05',
  });
  const { lines, balance } = followed(book.ledger([later, out, paid]), 'money', 'owed:ada');
  expect(lines.map((line) => [line.record, line.amount, line.balance])).toEqual([
    [out.id, 4650, 4650],
    [paid.id, -3000, 1650],
    [later.id, -1600, 50],
  ]);
  expect(balance).toBe(50);
});

test('a new price is a line of its own before that day’s movements', () => {
  const dearer = book.setting('product', {
    product: 'honey',
    name: 'Honey',
    price: 900,
    case: 12,
    from: '2027-03-01',
  });
  const before = book.movement('delivery', { lines: { honey: 24 } });
  const same = book.movement('handover', {
    seller: 'ada',
    lines: { honey: 4 },
    date: '2027-03-01',
  });
  const ledger = book.ledger([dearer, before, same]);
  const goods = followed(ledger, 'money', 'goods');
  expect(goods.lines.map((line) => [line.cause, line.amount])).toEqual([
    ['movement', 19200],
    ['new-price', 2400],
    ['movement', -3600],
  ]);
  expect(wrongAccounts(ledger)).toEqual([]);
});

test('several accounts are followed as if they were one: a pass between them is no line', () => {
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });
  const pass = book.movement('pass', { from: 'ada', to: 'ben', lines: { honey: 2 } });
  const families = runningBalance(book.ledger([out, pass]), {
    ledger: 'stock',
    accounts: (account) => account.startsWith('seller:'),
  });
  expect(families.lines.map((line) => line.record)).toEqual([out.id]);
  expect(families.lines[0]?.lines).toEqual({ honey: 5 });
});

test('one product can be followed alone', () => {
  const out = book.movement('handover', { seller: 'ada', lines: { honey: 5, jam: 1 } });
  const jam = runningBalance(book.ledger([out]), {
    ledger: 'stock',
    accounts: (account) => account === 'stockroom',
    product: 'jam',
  });
  expect(jam).toMatchObject({ balance: -1, lines: [{ amount: -1, lines: { jam: -1 } }] });
  expect(jam.lines[0]?.date).toBe(FIRST_DAY);
});

test('every account of the demo season ends at the ledger’s balance', () => {
  expect(wrongAccounts(Ledger.of(demoSeason()))).toEqual([]);
});

test('and every account of made-up seasons', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
      expect(wrongAccounts(Ledger.of(makeSeason(seed)))).toEqual([]);
    }),
    { numRuns: 12 },
  );
});

test('the property has teeth: a list that forgets new prices is caught', () => {
  const forgetful = (
    ledger: Ledger,
    name: 'stock' | 'money' | 'credit',
    account: string,
  ): RunningBalance => {
    const right = followed(ledger, name, account);
    const lines = right.lines.filter((line) => line.cause === 'movement');
    return { lines, balance: lines.reduce((sum, line) => sum + line.amount, 0) };
  };
  const dearer = book.setting('product', {
    product: 'jam',
    name: 'Jam',
    price: 700,
    case: 12,
    from: '2027-03-01',
  });
  const ledger = book.ledger([book.movement('delivery', { lines: { jam: 12 } }), dearer]);
  expect(wrongAccounts(ledger, forgetful)).toContain('money:goods');
});
