import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { bankEntries } from '../../questions/match/bank-entries.ts';
import { run } from './test-run.ts';

/** The demo season against statements made of its own records. */
const folder = mkdtempSync(join(tmpdir(), 'cratebook-match-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const demoText = [...writeBook(demoHeader, demoSeason())].join('');
const entries = bankEntries(Ledger.of(demoSeason()));
const rows = entries.map(({ date, cents }) => `${date},line,${(cents / 100).toFixed(2)}`);

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

async function match(...args: readonly string[]) {
  const { code, out, notes } = await run(['match', '-', ...args, '--json'], demoText);
  return { code, notes, answer: code === 2 ? undefined : JSON.parse(out) };
}

describe('the bank’s statement', () => {
  it('agrees line by line with the keys of the contract', async () => {
    const { code, answer } = await match(
      '--bank',
      file('all.csv', ['Date,Memo,Amount', ...rows].join('\n')),
    );
    expect(code).toBe(0);
    expect(answer.matched).toHaveLength(rows.length);
    expect(answer.matched[0]).toEqual({
      line: 1,
      records: [entries[0]?.record],
      reason: expect.any(String),
      sure: true,
    });
    expect(answer).toMatchObject({ unmatchedLines: [], unmatchedRecords: [], outstanding: 0 });
    expect(answer.bankBalance).toBe(answer.bookBalance);
  });

  it('without a line, and with one of its own, ends with 1 and offers a record', async () => {
    const fee = '2027-03-31,Monthly service fee,-5.00';
    const text = ['Date,Memo,Amount', ...rows.slice(1), fee].join('\n');
    const { code, answer } = await match('--bank', file('some.csv', text));
    expect(code).toBe(1);
    expect(answer).toMatchObject({
      unmatchedLines: [rows.length],
      unmatchedRecords: [entries[0]?.record],
      outstanding: entries[0]?.cents,
      missing: [{ line: rows.length, record: { kind: 'bank-fee', cents: 500 } }],
    });
    const { out } = await run(['match', '-', '--bank', join(folder, 'some.csv')], demoText);
    expect(out).toContain('Only at the bank\n▲ line');
  });

  it('takes columns and the order of days that were said', async () => {
    const path = file('two.csv', 'When,What,Much\n03/04/2027,x,5\n');
    const columns = { date: 'When', amount: 'Much', days: 'day-month-year', decimals: '.' };
    const said = file('columns.json', JSON.stringify(columns));
    expect((await match('--bank', path, '--columns', said)).code).toBe(1);
    const guessed = file('three.csv', 'Date,Memo,Amount\n03/04/2027,x,5\n');
    expect((await match('--bank', guessed)).code).toBe(2);
    expect((await match('--bank', guessed, '--days', 'month-day-year')).code).toBe(1);
    const wrong = file('wrong.json', '{"date":"When"}');
    expect((await match('--bank', path, '--columns', wrong)).code).toBe(2);
  });

  it.each([
    [['--bank', 'none.ofx'], 'none.ofx: cannot be read'],
    [[], 'wanted either --bank FILE or --supplier FILE'],
    [['--bank', 'a', '--days', 'x'], '--days: said "x"'],
  ])('%j: one clear line, exit code 2', async (args, said) => {
    const { code, notes } = await match(...args);
    expect(code).toBe(2);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toContain(said);
  });
});

describe('the supplier’s statement', () => {
  it('agrees, differs and misses, each in its pile', async () => {
    const deliveries = Ledger.of(demoSeason())
      .movements()
      .filter((each) => each.kind === 'delivery');
    const [first] = deliveries;
    const lines = Object.entries(first?.lines ?? {}).map(
      ([product, units], at) =>
        `${first?.date},Delivery,${first?.slip},${product},${at === 0 ? units + 1 : units}`,
    );
    const swap = '2027-03-20,Transfer from Millbrook,S-77,jam,6';
    const text = ['Date,Type,Slip,Product,Units', ...lines, swap].join('\n');
    const { code, answer } = await match('--supplier', file('supplier.csv', text));
    expect(code).toBe(1);
    expect(answer.matched).toHaveLength(lines.length - 1);
    expect(answer.differ).toMatchObject([{ line: 1, records: [first?.id] }]);
    expect(answer.missing).toMatchObject([
      { lines: [lines.length + 1], record: { kind: 'swap-in', lines: { jam: 6 } } },
    ]);
    expect(answer.unmatchedLines).toEqual([1, lines.length + 1]);
  });
});
