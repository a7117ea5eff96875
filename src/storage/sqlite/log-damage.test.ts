import { copyFileSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../base/seeded.ts';
import { payment, taken } from '../../journal/test-payments.ts';
import { freshPath, openStore, SPRING } from './test-store.ts';

/** A store as a crash leaves it: its newest records are in the log alone. */
const RECORDS = 60;
const FLIPS = 150;
/** The last commit writes two pages; damage in them looks like a power cut. */
const LAST_COMMIT_BYTES = 2 * (4096 + 24);

describe('the log that a crash left', () => {
  test('is taken whole, and leaves nothing behind when the store is closed', async () => {
    const path = await crashedStore();
    expect(await arrivalsIn(path)).toEqual({ damage: [], records: RECORDS });
    expect(existsSync(`${path}-wal`)).toBe(false);
    expect(existsSync(`${path}-wal-damaged`)).toBe(false);
  });

  test('cut off anywhere, as by a power cut, gives what came before and no alarm', async () => {
    const path = await crashedStore();
    const log = readFileSync(`${path}-wal`);
    const random = seeded(3);
    for (let cut = 0; cut < 30; cut += 1) {
      const copy = copyOf(path, log.subarray(0, random.whole(0, log.length)));
      const { damage, records } = await arrivalsIn(copy);
      expect(damage).toEqual([]);
      expect(records).toBeLessThanOrEqual(RECORDS);
    }
  });

  test('any turned bit before the last commit is told, and stays told', async () => {
    const path = await crashedStore();
    const log = readFileSync(`${path}-wal`);
    const random = seeded(20_270_201);
    let lostWithoutUs = 0;
    for (let flip = 0; flip < FLIPS; flip += 1) {
      const at = random.whole(0, log.length - 1 - LAST_COMMIT_BYTES);
      const turned = Buffer.from(log);
      turned[at] = (turned[at] ?? 0) ^ (1 << random.whole(0, 7));
      if (recordsWithoutCheck(copyOf(path, turned)) < RECORDS) lostWithoutUs += 1;
      const copy = copyOf(path, turned);
      const { damage, records } = await arrivalsIn(copy);
      if (records === RECORDS && damage.length === 0) continue;
      expect(damage.join()).toContain('-wal-damaged');
      expect(readFileSync(`${copy}-wal-damaged`).equals(turned)).toBe(true);
      expect((await arrivalsIn(copy)).damage.join()).toContain('records are missing');
    }
    // Teeth: SQLite alone forgets the records after a turned bit, and says nothing.
    expect(lostWithoutUs).toBeGreaterThan(FLIPS / 2);
  });

  test('a damaged log stops writing, and what came before is read', async () => {
    const path = await crashedStore();
    const log = readFileSync(`${path}-wal`);
    const middle = Math.floor(log.length / 2);
    log[middle] = (log[middle] ?? 0) ^ 1;
    const copy = copyOf(path, log);
    const store = await openStore(copy);
    const book = await store.open(SPRING);
    expect((await book.readSince(0)).length).toBeGreaterThan(0);
    expect(await book.append([payment(RECORDS)])).toMatchObject({
      refusal: { name: 'store_is_damaged' },
    });
    await store.close();
    rmSync(`${copy}-wal-damaged`);
  });
});

async function crashedStore(): Promise<string> {
  const path = freshPath();
  const store = await openStore(path);
  const book = await store.open(SPRING);
  for (let number = 0; number < RECORDS; number += 1) taken(await book.append([payment(number)]));
  const copy = freshPath();
  // Reading the file here lets go of the store's lock on it, which does no harm in this test.
  copyFileSync(path, copy);
  copyFileSync(`${path}-wal`, `${copy}-wal`);
  await store.close();
  return copy;
}

function copyOf(path: string, log: Buffer): string {
  const copy = freshPath();
  copyFileSync(path, copy);
  writeFileSync(`${copy}-wal`, log);
  return copy;
}

async function arrivalsIn(path: string) {
  const store = await openStore(path);
  const records = (await (await store.open(SPRING)).readSince(0)).length;
  await store.close();
  return { damage: store.damage, records };
}

function recordsWithoutCheck(path: string): number {
  const db = new DatabaseSync(path);
  try {
    return Number(db.prepare('select count(*) as n from record').get()?.n);
  } catch {
    return 0;
  } finally {
    db.close();
  }
}
