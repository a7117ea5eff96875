import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { run } from './test-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'cratebook-share-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const book = join(folder, 'demo.jsonl');
writeFileSync(book, [...writeBook(demoHeader, demoSeason())].join(''));

const problem = JSON.stringify({
  products: { honey: 10, jam: 3 },
  sellers: [
    { seller: 'ada', weight: 90 },
    { seller: 'ben', weight: 60, locked: { jam: 0 } },
  ],
});

describe('shareout', () => {
  it('answers a problem from standard input with the keys of the contract', async () => {
    const { code, out } = await run(['shareout', '--json'], problem);
    const answer = JSON.parse(out);
    expect(code).toBe(0);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(['lines', 'totals', 'due', 'left', 'worst']),
    );
    expect(answer.totals).toEqual({ ada: 8, ben: 5 });
    expect(answer.lines).toEqual({ ada: { honey: 5, jam: 3 }, ben: { honey: 5 } });
  });

  it('shares an open pool of a book, and says what cannot be', async () => {
    const ledger = Ledger.of(demoSeason());
    const open = Object.entries(ledger.balances.toAccounts().credit).flatMap(([, accounts]) =>
      Object.keys(accounts).filter((account) => account.startsWith('pool:')),
    );
    const pool = open[0]?.slice('pool:'.length) ?? '';
    const { code, out } = await run(['shareout', book, '--pool', pool, '--json']);
    expect(code).toBe(0);
    const { left, totals } = JSON.parse(out);
    const units = ledger.balances.unitsOf('credit', `pool:${pool}`);
    expect(Object.values<number>(totals).reduce((sum, each) => sum + each, 0)).toBe(units);
    expect(new Set(Object.values(left))).toEqual(new Set([0]));
    expect((await run(['shareout', book, '--pool', pool])).out).toContain('due');
  });

  it('ends with 1 where locked cells leave something over', async () => {
    const locked = { honey: 1 };
    const text = JSON.stringify({
      products: { honey: 5 },
      sellers: [{ seller: 'ada', weight: 1, locked }],
    });
    const { code, out, notes } = await run(['shareout', '--json'], text);
    expect(code).toBe(1);
    expect(JSON.parse(out).left).toEqual({ honey: 4 });
    expect(notes.join()).toContain("4 honey left: every seller's honey is locked");
  });

  it.each([
    [['shareout', book], '--pool is missing'],
    [['shareout', book, '--pool', 'stall:moon'], 'there is no pool'],
    [['shareout', book, '--pool', 'post', '--by', 'luck'], '--by: said "luck"'],
    [['shareout', '--pool', 'post'], 'BOOK is missing'],
    [['shareout', '--by', 'even'], 'BOOK is missing'],
  ])('%j is refused in one line: %s', async (args, words) => {
    const { code, notes } = await run(args, problem);
    expect(code).toBe(2);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toContain(words);
  });
});

describe('lift', () => {
  const lift = JSON.stringify({
    pool: 12,
    sellers: [
      { seller: 'ada', credited: 38, goal: 40 },
      { seller: 'ben', credited: 45 },
    ],
    steps: [{ units: 50, worth: 2.5 }],
  });

  it('answers with the keys of the contract', async () => {
    const { code, out } = await run(['lift', '--json'], lift);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      give: { ada: 12, ben: 0 },
      goalsReached: 1,
      worth: 2.5,
      left: 0,
    });
  });

  it('tells a table, and the same question as an integer programme', async () => {
    expect((await run(['lift'], lift)).out).toContain('1 at their goal, steps worth 2.5');
    const { out } = await run(['lift', '--programme'], lift);
    expect(out).toMatch(/^\\ optimum = goals \* 51 \+ worth\nMaximize\n/);
  });

  it('refuses a bad problem in one line', async () => {
    const { code, notes } = await run(['lift', '--json'], '{"pool":0,"sellers":[],"steps":[]}');
    expect(code).toBe(2);
    expect(notes).toHaveLength(1);
  });
});
