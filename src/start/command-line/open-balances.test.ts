import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../../scenarios/demo/demo-season.ts';
import { makeSeason } from '../../../simulation/season-maker.ts';
import { assert } from '../../base/assert.ts';
import { writeBook } from '../../intake/write-book.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { balancesInParts } from './balances-in-parts.ts';
import { openBalances } from './open-balances.ts';
import type { Outlet } from './outlet.ts';
import { type FileParts, startParts } from './part-threads.ts';
import { Arguments } from './read-arguments.ts';
import { run } from './test-run.ts';

/** Small books in many small parts, so that threads meet every seam. */

const folder = mkdtempSync(join(tmpdir(), 'cratebook-parts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const SHARES = { threads: 3, least: 1000, piece: 700 };
const DAY = '2027-03-01';
const outlet: Outlet = {
  write: async () => {},
  note: () => {},
  progress: () => {},
  environment: {},
  input: (async function* () {})(),
  isScreen: false,
  today: '2027-04-04',
};

function fileOf(name: string, text: string): string {
  const path = join(folder, `${name}.jsonl`);
  writeFileSync(path, text);
  return path;
}

function partsOf(path: string): FileParts {
  const parts = startParts(path, true, SHARES);
  assert(parts?.others.length === 2, 'a book for three threads');
  return parts;
}

const seasons = [
  ['the demo season', demoSeason()] as const,
  ...[1, 2, 3].map((seed) => [`made season ${seed}`, makeSeason(seed)] as const),
];

describe.each(seasons)('%s, read by three threads', (name, records) => {
  const path = fileOf(name, [...writeBook(demoHeader, records)].join(''));
  const ledger = Ledger.of(records);

  it('is surely fine, and has the balances of the ledger', async () => {
    const book = await balancesInParts(partsOf(path), outlet, undefined);
    expect(book?.balances.toAccounts()).toEqual(ledger.balances.toAccounts());
    expect(book?.setup).toEqual(ledger.setup);
  });

  it('has them as of a day', async () => {
    const book = await balancesInParts(partsOf(path), outlet, DAY);
    expect(book?.balances.toAccounts()).toEqual(ledger.asOf(DAY).toAccounts());
  });
});

describe('a broken book, read by three threads', () => {
  const lines = [...writeBook(demoHeader, demoSeason())];
  const BREAKS: Readonly<Record<string, (line: string) => string>> = {
    'no JSON': (line) => line.slice(0, -4),
    'nobody who wrote it': (line) => line.replace('"by":', '"bye":'),
    'an unknown kind': (line) => line.replace(/"kind":"[^"]+"/, '"kind":"gossip"'),
    'an id again, with other content': (line) =>
      line + line.replace(/"by":"[^"]+"/, '"by":"another"'),
    'a removal of what is not there': (line) =>
      line.replace(/\{.*\}/, (record) => {
        const { id, at, by } = JSON.parse(record);
        const voids = '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10';
        return JSON.stringify({ id, at, by, kind: 'void', voids, reason: 'x' });
      }),
  };
  const places = [1, Math.floor(lines.length / 2), lines.length - 1];
  const cases = Object.keys(BREAKS).flatMap((name) =>
    places.map((place) => [name, place] as const),
  );

  it.each(cases)('%s on line %i: is said as by any command', async (name, place) => {
    const broken = lines.map((line, at) => (at === place ? (BREAKS[name]?.(line) ?? line) : line));
    const path = fileOf(`broken ${name} ${place}`, broken.join(''));
    const { notes, code } = await run(['prizes', path]);
    expect(code).toBe(2);
    const given = new Arguments(new Map(), new Set(), [path]);
    const refused = openBalances(given, outlet, true, partsOf(path), undefined).then(
      () => 'not refused',
      (error: unknown) => (error instanceof Error ? error.message : ''),
    );
    expect([`cratebook prizes: ${await refused}`]).toEqual(notes);
  });
});

describe('one thread is enough', () => {
  it('for a small book, for standard input, and for what is no book file', () => {
    const small = fileOf('small', [...writeBook(demoHeader, demoSeason())].join(''));
    expect(startParts(small, true)).toBeUndefined();
    expect(startParts(small, true, { ...SHARES, threads: 1 })).toBeUndefined();
    expect(startParts('-', true, SHARES)).toBeUndefined();
    expect(startParts(join(folder, 'missing.jsonl'), true, SHARES)).toBeUndefined();
    expect(startParts(folder, true, SHARES)).toBeUndefined();
    const store = fileOf('store', `SQLite format 3\0${' '.repeat(9000)}`);
    expect(startParts(store, true, SHARES)).toBeUndefined();
  });
});
