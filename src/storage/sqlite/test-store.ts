import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { payments, taken } from '../../journal/test-payments.ts';
import { openSqliteStore, type SqliteStore } from './open-sqlite-store.ts';

/** Store files for tests, each in its own folder; all are removed when the test file is done. */
export const SPRING = { group: 'wrenfield', season: 'spring-2027' };

const root = mkdtempSync(join(tmpdir(), 'cratebook-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

export function freshPath(): string {
  return join(mkdtempSync(join(root, 'store-')), 'store.sqlite');
}

export async function openStore(path: string): Promise<SqliteStore> {
  return taken(await openSqliteStore(path));
}

/** A closed store file with that many payments in the spring book. */
export async function filledStore(count: number): Promise<string> {
  const path = freshPath();
  const store = await openStore(path);
  const book = await store.open(SPRING);
  // Many small appends, so that the tables grow as they do in use.
  const records = payments(count);
  for (const record of records) void book.append([record]);
  taken(await book.append(records));
  await store.close();
  return path;
}
