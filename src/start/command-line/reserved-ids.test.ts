import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { writeBook } from '../../intake/write-book.ts';
import { type Ran, run } from './test-run.ts';

/**
 * `constructor` is a fair id (spec: a-z, 0-9 and -) and the only one that every object of the
 * language already has. A season in which things have that id must answer word for word like the
 * same season with other ids.
 */
const RESERVED = 'constructor';
/** As long, and in no name; it sorts the same among the ids of the demo season. */
const ORDINARY = 'constructed';
const STOOD_FOR = ['chutney', 'chidera', 'castillo', 'bakery', 'fernhill', 'bottle'];

const demoText = [...writeBook(demoHeader, demoSeason())].join('');

const questions: readonly (readonly string[])[] = [
  ['balances', '-'],
  ['balances', '-', '--as-of', '2027-03-01', '--json'],
  ['check', '-', '--json'],
  ['closing', '-', '--json'],
  ['prizes', '-', '--json'],
  ['statement', '-', '--family', 'castillo'],
  ['statement', '-', '--family', 'okafor', '--json'],
  ['export', '-', '--to', 'accounts'],
  ['export', '-', '--to', 'csv'],
];

/** The season, and a question about it, with another id in the place of one. */
function asked(question: readonly string[], id: string, by: string): Promise<Ran> {
  const args = question.map((arg) => (arg === id ? by : arg));
  return run(args, demoText.replaceAll(`"${id}"`, `"${by}"`));
}

describe.each(STOOD_FOR)('a season with the id constructor in place of %s', (id) => {
  it.each(questions)('answers %s %s as with any other id', async (...question) => {
    const before = await asked(question, id, ORDINARY);
    const after = await asked(question, id, RESERVED);
    expect(after.code).toBe(0);
    expect(after.out).toBe(before.out.replaceAll(ORDINARY, RESERVED));
  });
});

it('statements of such a season are printed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-ids-'));
  const text = STOOD_FOR.reduce((so, id) => so.replaceAll(`"${id}"`, `"${RESERVED}"`), demoText);
  const printed = await run(['statements', '-', '--out', folder, '--json'], text);
  expect(JSON.parse(printed.out).files).toContain(join(folder, `statement-${RESERVED}.pdf`));
  rmSync(folder, { recursive: true });
});
