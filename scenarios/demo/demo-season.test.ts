import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBook } from '../../src/intake/read-book.ts';
import { writeBook } from '../../src/intake/write-book.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { closingList } from '../../src/questions/closing-list.ts';
import { liftAllowed } from '../../src/questions/share/lift-allowed.ts';
import { seasonFairness } from '../../src/questions/share/season-fairness.ts';
import { checkBook } from '../../src/rules/check-book.ts';
import { demoHeader, demoSeason, demoSeasonMended } from './demo-season.ts';

const demo = Ledger.of(demoSeason());
const fileText = [...writeBook(demoHeader, demoSeason())].join('');
const LAST_DAY = '2027-04-04';

describe('the demo season', () => {
  it('is the file beside it', () => {
    const file = new URL('wrenfield-spring-2027.jsonl', import.meta.url);
    expect(readFileSync(file, 'utf8')).toBe(fileText);
  });

  it('reads back without a finding, as a book and in each line', () => {
    const { records, lines, findings } = readBook(fileText);
    expect(findings).toEqual([]);
    expect(records).toEqual(demoSeason());
    const told = checkBook({ ledger: demo, records, lines }).inOrder();
    expect(told.filter((finding) => finding.severity === 'error')).toEqual([]);
  });

  it('has the size it promises', () => {
    const { sellers, families, products, stalls, hosts } = demo.setup;
    expect([sellers.size, families.size, products.size, stalls.size, hosts.size]).toEqual([
      14, 11, 8, 8, 3,
    ]);
    expect(demoSeason().filter((record) => record.replaces && record.kind !== 'void')).toHaveLength(
      2,
    );
    expect(demoSeason().filter((record) => record.kind === 'void')).toHaveLength(1);
  });

  it('never has less than nothing on the shelf, in the box or at the bank', () => {
    for (const day of new Set(demo.movements().map((movement) => movement.date))) {
      const balances = demo.asOf(day);
      const units = Object.values(balances.linesOf('stock', 'stockroom'));
      const money = ['cashbox', 'cards', 'bank'].map((account) => balances.moneyOf(account));
      expect(Math.min(0, ...units, ...money), day).toBe(0);
    }
  });

  it('ends with the five things wrong that README.md lists', () => {
    expect(demo.balances.linesOf('stock', 'stockroom')).toEqual({ jam: 6, 'tea-mint': 9 });
    expect(demo.balances.unitsOf('credit', 'pool:stall:garden-0327')).toBe(57);
    expect(demo.balances.toAccounts().money).toEqual({
      bank: 53090,
      fees: 2620,
      goods: 8400,
      losses: 5100,
      overshort: 75,
      'owed:mei': -2100,
      'owed:noa': -4500,
      'owed:reka': 10200,
      proceeds: -71085,
      supplier: -1800,
    });
  });

  it('shows them in the closing list', () => {
    const list = closingList(demo, LAST_DAY);
    const open = list.items.filter((item) => item.state === 'open').map((item) => item.item);
    expect(list.ready).toBe(false);
    expect(open).toEqual([
      'stockroom-counted',
      'stockroom',
      'owed:mei',
      'owed:noa',
      'owed:reka',
      'stall:garden-0327',
      'supplier',
    ]);
  });

  it('is ready to close once the five are put right', () => {
    const list = closingList(Ledger.of(demoSeasonMended()), LAST_DAY);
    expect(list.items.filter((item) => item.state === 'open')).toEqual([]);
    expect(list.ready).toBe(true);
  });

  it('shares every pool by its own rule, so that nobody is a unit from due', () => {
    const mended = Ledger.of(demoSeasonMended());
    expect(seasonFairness(mended).worst).toBeLessThan(0.5);
    expect(liftAllowed(mended)).toMatchObject({ allowed: true });
  });

  it('comes out even once the five are put right', () => {
    const { balances } = Ledger.of(demoSeasonMended());
    expect(balances.linesOf('stock', 'stockroom')).toEqual({});
    for (const account of balances.table('credit').keys()) {
      if (account.startsWith('pool:')) expect(balances.unitsOf('credit', account)).toBe(0);
    }
    // What is left at the bank is proceeds less losses, fees and shortage.
    expect(balances.toAccounts().money).toEqual({
      bank: 71085 - 2800 - 5100 - 75,
      fees: 2800,
      losses: 5100,
      overshort: 75,
      proceeds: -71085,
    });
  });
});
