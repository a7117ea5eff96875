import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { run } from './test-run.ts';

/** Balances are read another way than all else: what is wrong with a book is said the same. */

const folder = mkdtempSync(join(tmpdir(), 'cratebook-open-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const demoText = [...writeBook(demoHeader, demoSeason())].join('');

const BROKEN: Readonly<Record<string, string>> = {
  'a negative amount': demoText.replace('"cents":', '"cents":-'),
  'an unknown seller': demoText.replace(
    /"kind":"payment"(.*?)"seller":"[^"]+"/,
    '"kind":"payment"$1"seller":"nobody"',
  ),
  'a file that was cut off': demoText.slice(0, -40),
  'no header': demoText.slice(demoText.indexOf('\n') + 1),
  'nothing at all': '',
};

describe.each(Object.entries(BROKEN))('%s', (name, text) => {
  it('is said by balances as by any command, from a file and from standard input', async () => {
    const file = join(folder, `${name}.jsonl`);
    writeFileSync(file, text);
    const said = await run(['prizes', file]);
    expect(said).toMatchObject({ code: 2, out: '' });
    const [line = ''] = said.notes;
    expect(line).toMatch(/^cratebook prizes: /);
    const ofBalances = line.replace('prizes', 'balances');
    expect(await run(['balances', file])).toEqual({ ...said, notes: [ofBalances] });
    const ofInput = ofBalances.replace(file, 'standard input');
    expect(await run(['balances', '-'], text)).toEqual({ ...said, notes: [ofInput] });
  });
});

it('an escape, which only the slow way reads, changes nothing', async () => {
  const escaped = demoText.replaceAll('"kind":"payment"', '"kind":"p\\u0061yment"');
  expect(escaped).not.toBe(demoText);
  expect(await run(['balances', '-'], escaped)).toEqual(await run(['balances', '-'], demoText));
});
