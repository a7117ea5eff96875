import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { readBook } from '../../src/intake/read-book.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Store } from '../../src/journal/store.ts';
import { importInto } from '../../src/start/command-line/import.ts';
import { openSqliteStore } from '../../src/storage/sqlite/open-sqlite-store.ts';
import { brokenBooks } from './broken-books.ts';
import { type BrokenFile, textOf } from './broken-file.ts';
import { brokenValues } from './broken-values.ts';
import { goodBook } from './good-book.ts';

/** A broken file changes nothing where books are kept, and the command line says so in one line. */
const brokenFiles: readonly BrokenFile[] = [...brokenValues, ...brokenBooks];
const BOOK = { group: 'wrenfield', season: 'spring-2027' };
const folder = mkdtempSync(join(tmpdir(), 'cratebook-broken-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Every so many files, so that a handful from all groups is tried where each takes long. */
function someOf(step: number): BrokenFile[] {
  return brokenFiles.filter((_, index) => index % step === 0);
}

async function keptIn(store: Store): Promise<string> {
  const books = await store.books();
  const arrived = await (await store.open(BOOK)).readSince(0);
  return JSON.stringify([books, arrived]);
}

async function expectUnchanged(store: Store, files: readonly BrokenFile[]): Promise<void> {
  const first = await importInto(store, readBook(textOf(goodBook.slice(0, 20))), 'book.jsonl');
  expect(first.added).toHaveLength(19);
  const before = await keptIn(store);
  for (const file of files) {
    await expect(importInto(store, readBook(file.bytes()), 'book.jsonl')).rejects.toThrow(
      /^book\.jsonl, line .*; nothing was added$/,
    );
  }
  expect(await keptIn(store)).toBe(before);
  const rest = await importInto(store, readBook(textOf(goodBook)), 'book.jsonl');
  expect(rest.added).toHaveLength(goodBook.length - 20);
}

describe('importing a broken file', () => {
  it('changes nothing in a store in memory, for every file', async () => {
    await expectUnchanged(memoryStore(), brokenFiles);
  });

  it('changes nothing in a store file, for a handful', async () => {
    const opened = await openSqliteStore(join(folder, 'store.sqlite'));
    if (!opened.ok) throw new Error(opened.refusal.message);
    await expectUnchanged(opened.value, someOf(12));
    await opened.value.close();
  });
});

describe('the command line as a process of its own', () => {
  const program = fileURLToPath(new URL('../../src/start/cratebook.ts', import.meta.url));
  const run = (...args: string[]) =>
    spawnSync(process.execPath, [program, ...args], { encoding: 'utf8' });

  it.each(someOf(40).map((file) => [`${file.group}: ${file.name}`, file] as const))(
    'ends with 2 and one line: %s',
    (_name, file) => {
      const path = join(folder, 'book.jsonl');
      writeFileSync(path, Buffer.concat([...file.bytes()]));
      const { status, stdout, stderr } = run('balances', path);
      expect(status).toBe(2);
      expect(stdout).toBe('');
      expect(stderr).toMatch(/^cratebook balances: .*, line \d+.*\n$/);
      expect(run('check', path, '--json').status).not.toBe(0);
    },
  );

  it('imports nothing of a broken file into a data folder', () => {
    const good = join(folder, 'good.jsonl');
    writeFileSync(good, textOf(goodBook));
    const data = join(folder, 'data');
    expect(run('import', good, '--data', data).status).toBe(0);
    const store = join(data, 'books.sqlite');
    const before = run('export', store, '--to', 'book').stdout;
    const broken = join(folder, 'broken.jsonl');
    writeFileSync(broken, readFileSync(good, 'utf8').replace('"cents":3000', '"cents":-3000'));
    expect(run('import', broken, '--data', data)).toMatchObject({ status: 2, stdout: '' });
    expect(run('export', store, '--to', 'book').stdout).toBe(before);
  });
});
