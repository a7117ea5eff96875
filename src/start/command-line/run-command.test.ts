import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { openSqliteStore } from '../../storage/sqlite/open-sqlite-store.ts';
import { commands } from './commands.ts';
import { type Ran, run } from './test-run.ts';

/** The contract of the command line: fixed keys, exit codes, one line where something is wrong. */
const folder = mkdtempSync(join(tmpdir(), 'cratebook-line-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const demoText = [...writeBook(demoHeader, demoSeason())].join('');
const book = join(folder, 'demo.jsonl');
writeFileSync(book, demoText);

describe('answers for programs have the keys of the contract', () => {
  it('balances: by product and account, also as of a day and from standard input', async () => {
    const ledger = Ledger.of(demoSeason());
    const now = await run(['balances', book, '--json']);
    expect(JSON.parse(now.out)).toEqual(ledger.balances.toAccounts());
    const then = await run(['balances', '-', '--as-of', '2027-03-01', '--json'], demoText);
    expect(JSON.parse(then.out)).toEqual(ledger.asOf('2027-03-01').toAccounts());
    expect(then.out).not.toBe(now.out);
  });

  it('check: how many records, and each finding with its line', async () => {
    const fine = await run(['check', book, '--json']);
    expect(fine).toMatchObject({ code: 0, out: '{"records":210,"findings":[]}\n' });
    const broken = demoText.replace(
      '"tender":"cash","cents":',
      '"sent":1,"tender":"cash","cents":-',
    );
    const { code, out } = await run(['check', '-', '--json'], broken);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      records: 209,
      findings: [
        { field: 'cents', severity: 'error', wanted: expect.any(String) },
        { field: 'sent', severity: 'warning' },
      ],
    });
    expect(await run(['check', '-'], 'not a book')).toMatchObject({ code: 2 });
  });

  it('check: something that is missing was said as null', async () => {
    const { out } = await run(['check', '-', '--json'], demoText.replace('"by":"', '"buy":"'));
    expect(JSON.parse(out).findings[0]).toMatchObject({ field: 'by', said: null });
  });

  it('closing: ready, and every item with what is left, its records and what is next', async () => {
    const { code, out } = await run(['closing', book, '--json']);
    const answer = JSON.parse(out);
    expect(code).toBe(0);
    expect(answer.ready).toBe(false);
    for (const item of answer.items) {
      expect(Object.keys(item)).toEqual(
        expect.arrayContaining(['item', 'state', 'left', 'records', 'next']),
      );
      expect(['done', 'open', 'not-needed']).toContain(item.state);
    }
  });

  it('explain: what differs, what may have gone wrong, and 1 where it differs', async () => {
    const seen = JSON.stringify({ observed: { 'stock:stockroom': { jam: 6 } } });
    const { code, out } = await run(['explain', book, '--json'], seen);
    const answer = JSON.parse(out);
    expect(code).toBe(1);
    expect(answer).toMatchObject({
      difference: { 'stock:stockroom': { 'tea-mint': -9 } },
      unexplained: false,
    });
    expect(Object.keys(answer.explanations[0])).toEqual(['edits', 'odds', 'kind', 'words']);
    expect(answer.explanations[0]).toMatchObject({
      kind: 'neighbours-swapped',
      edits: [{ op: 'change', fields: { lines: { jam: 4, 'tea-mint': 21 } } }],
    });
    expect((await run(['explain', book], seen)).out).toContain('Mint tea; 21 would make it agree');
    const same = JSON.stringify({ observed: { 'stock:stockroom': { jam: 6, 'tea-mint': 9 } } });
    const agrees = await run(['explain', book, '--json'], same);
    const nothing = { difference: {}, explanations: [], unexplained: false };
    expect(agrees).toMatchObject({ code: 0, out: `${JSON.stringify(nothing)}\n` });
  });

  it('prizes: sellers and the order', async () => {
    const { sellers, order } = JSON.parse((await run(['prizes', book, '--json'])).out);
    expect(sellers[0]).toMatchObject({
      seller: expect.any(String),
      credited: expect.any(Number),
      steps: expect.any(Array),
      missing: expect.any(Array),
    });
    expect(order[0]).toMatchObject({ level: expect.any(String), pieces: expect.any(Number) });
  });

  it('export: a journal, comma-separated values, a workbook, and the book itself', async () => {
    const accounts = await run(['export', book, '--to', 'accounts']);
    expect(accounts.out).toContain('stock:stockroom');
    expect((await run(['export', book, '--to', 'csv'])).out).toMatch(/^record,.*\r\n/);
    expect((await run(['export', book, '--to', 'book'])).out).toBe(demoText);
    const out = join(folder, 'demo.xlsx');
    expect((await run(['export', book, '--to', 'xlsx', '--out', out])).code).toBe(0);
    expect(readFileSync(out).subarray(0, 2).toString()).toBe('PK');
  });
});

describe('a family’s statement', () => {
  it('is text for the screen, and a tagged PDF', async () => {
    const [family = ''] = Ledger.of(demoSeason()).setup.families.keys();
    const { out } = await run(['statement', book, '--family', family]);
    expect(out).toMatch(/Taken \d+/);
    const pdf = join(folder, 'one.pdf');
    expect((await run(['statement', book, '--family', family, '--pdf', pdf])).code).toBe(0);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('is made for every family into a folder', async () => {
    const out = join(folder, 'statements');
    const { files } = JSON.parse((await run(['statements', book, '--out', out, '--json'])).out);
    expect(files).toHaveLength(11);
    expect(readFileSync(files[10]).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('a store', () => {
  it('takes a book, is answered from, is backed up and restored', async () => {
    const [data, again] = [join(folder, 'data'), join(folder, 'again')];
    const added = await run(['import', book, '--data', data, '--json']);
    expect(JSON.parse(added.out)).toMatchObject({ added: 210, already: 0 });
    const copy = join(folder, 'copy.sqlite');
    expect((await run(['backup', '--data', data, '--out', copy])).code).toBe(0);
    expect((await run(['restore', copy, '--data', again])).code).toBe(0);
    const store = join(again, 'books.sqlite');
    const [kept, file] = await Promise.all(
      [store, book].map((path) => run(['balances', path, '--json'])),
    );
    expect(kept?.out).toBe(file?.out);
    expect(await run(['restore', copy, '--data', again])).toMatchObject({ code: 2 });
    const other = await run(['balances', store, '--season', 'autumn']);
    expect(other.notes[0]).toContain('choose one book: --group wrenfield --season spring-2027');
  });
});

describe('a store that a running server holds open', () => {
  it('is answered from by every reading command, and not written', async () => {
    const data = join(folder, 'served');
    await run(['import', book, '--data', data]);
    const store = join(data, 'books.sqlite');
    const [family = ''] = Ledger.of(demoSeason()).setup.families.keys();
    const questions = [
      ['balances', store],
      ['check', store],
      ['closing', store],
      ['prizes', store],
      ['statement', store, '--family', family],
      ['export', store, '--to', 'accounts'],
    ];
    const answers = async () => {
      const ran: Ran[] = [];
      for (const question of questions) ran.push(await run(question));
      return ran;
    };
    const atRest = await answers();
    const opened = await openSqliteStore(store);
    if (!opened.ok) throw new Error(opened.refusal.message);
    expect(await answers()).toEqual(atRest);
    expect(atRest.map((ran) => ran.code)).toEqual(questions.map(() => 0));
    const all = join(folder, 'all.pdf');
    expect(await run(['statements', store, '--together', all, '--json'])).toMatchObject({
      code: 0,
      out: `${JSON.stringify({ files: [all] })}\n`,
    });
    expect(await run(['import', book, '--data', data])).toMatchObject({
      code: 2,
      notes: [expect.stringContaining('is already open in another Cratebook')],
    });
    await opened.value.close();
  });
});

describe('observations that cannot be used end with 2 and one line', () => {
  const cases: readonly [input: string, line: RegExp][] = [
    ['', /is empty, wanted \{"observed"/],
    ['{', /is not JSON/],
    ['[]', /has no "observed"/],
    ['{"observed":{}}', /names no account/],
    ['{"observed":{"money:bank":1,"money:bank":2}}', /money:bank: said .*, wanted .* once/],
    ['{"observed":{"shelf":{"honey":1}}}', /said "shelf", wanted an account that begins with/],
    ['{"observed":{"stock:shelf":{"honey":1}}}', /said "stock:shelf", wanted stock: with/],
    ['{"observed":{"money:owed:nobody":1}}', /said "money:owed:nobody", wanted money: with/],
    ['{"observed":{"money:bank":10.5}}', /money:bank: said 10\.5, wanted a whole number/],
    ['{"observed":{"stock:stockroom":{"honey":"3"}}}', /honey: said "3", wanted a whole number/],
    ['{"observed":{"stock:stockroom":{"rum":3}}}', /said "rum", wanted the id of a product/],
    ['{"observed":{"stock:stockroom":3}}', /said 3, wanted whole units by product/],
  ];

  it.each(cases)('%s', async (input, line) => {
    const ran = await run(['explain', book, '--json'], input);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.notes).toHaveLength(1);
    expect(ran.notes[0]).toMatch(line);
  });
});

describe('what cannot be used ends with 2 and one line that says what is wanted', () => {
  const cases: readonly [args: readonly string[], line: RegExp][] = [
    [['balanec', 'x'], /there is no such command; did you mean balances\?/],
    [['balances'], /BOOK is missing/],
    [['balances', book, 'more'], /said "more", wanted nothing more/],
    [['balances', join(folder, 'no.jsonl')], /there is no such file/],
    [['balances', folder], /is a folder/],
    [['balances', book, '--as-off', '2027-03-01'], /no option --as-off; did you mean --as-of\?/],
    [['balances', book, '--as-of'], /--as-of needs a value/],
    [['balances', book, '--as-of', '--json'], /--as-of needs a value/],
    [['balances', book, '--as-of', '2027-02-30'], /said "2027-02-30", wanted a day/],
    [['balances', book, '--json=yes'], /--json takes no value/],
    [['closing', book, '--today', 'tomorrow'], /said "tomorrow", wanted a day/],
    [['statement', book], /--family is missing/],
    [['statements', book], /--out is missing: .* or --together FILE/],
    [['statement', book, '--family', 'nobody'], /no family "nobody"/],
    [['export', book], /--to is missing/],
    [['export', book, '--to', 'pdf'], /said "pdf", wanted accounts, csv, xlsx/],
    [['export', book, '--to', 'csv', '--out', book], /is the book itself/],
    [['demo', '--out', book], /is there already/],
    [['serve', '--port', '70000'], /wanted a whole number from 1 to 65535/],
    [['backup', '--out', 'x', '--data', join(folder, 'nothing')], /there is no store/],
  ];

  it.each(cases)('%j', async (args, line) => {
    const ran = await run(args);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.notes).toHaveLength(1);
    expect(ran.notes[0]).toMatch(line);
  });
});

it.each(Object.keys(commands))('%s has help with examples', async (name) => {
  const { code, out } = await run([name, '--help']);
  expect(code).toBe(0);
  expect(out).toContain('Examples\n  cratebook ');
  expect((await run(['--help'])).out).toContain(name);
});
