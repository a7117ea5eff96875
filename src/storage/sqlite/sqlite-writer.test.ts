import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test, vi } from 'vitest';
import { payment, payments, taken } from '../../journal/test-payments.ts';
import { freshPath, openStore, SPRING } from './test-store.ts';

describe('the writer', () => {
  test('appends that wait together share one transaction', async () => {
    const { commits, restore } = countCommits();
    const store = await openStore(freshPath());
    const book = await store.open(SPRING);
    const outcomes = await Promise.all(payments(30).map((record) => book.append([record])));
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    expect(commits()).toBe(1);
    await book.append([payment(30)]);
    expect(commits()).toBe(2);
    await store.close();
    restore();
  });

  test('closing writes what still waits', async () => {
    const path = freshPath();
    const store = await openStore(path);
    const book = await store.open(SPRING);
    const waiting = book.append([payment(0)]);
    await store.close();
    expect(taken(await waiting).added).toHaveLength(1);
    const again = await openStore(path);
    expect(await (await again.open(SPRING)).readSince(0)).toHaveLength(1);
    await again.close();
  });

  test('a large import is one transaction, and is verified at the next open', async () => {
    const { commits, restore } = countCommits();
    const path = freshPath();
    const store = await openStore(path);
    const book = await store.open(SPRING);
    const records = payments(20_000);
    expect(taken(await book.append(records)).added).toHaveLength(20_000);
    expect(commits()).toBe(1);
    await store.close();
    const again = await openStore(path);
    expect(again.damage).toEqual([]);
    expect((await (await again.open(SPRING)).readSince(19_999))[0]?.record).toEqual(
      records[19_999],
    );
    await again.close();
    restore();
  });

  test('a full disk refuses by name, keeps what was saved, and the store goes on', async () => {
    const limit = limitPages();
    const store = await openStore(freshPath());
    const book = await store.open(SPRING);
    taken(await book.append(payments(10)));
    limit.set(20);
    const refusal = await book.append(payments(500));
    expect(refusal).toMatchObject({ ok: false, refusal: { name: 'store_is_full' } });
    expect(await book.lastArrival()).toBe(10);
    expect(store.damage).toEqual([]);
    limit.set(100_000);
    expect(taken(await book.append(payments(500))).added[0]?.arrival).toBe(11);
    expect(await book.readSince(0)).toHaveLength(500);
    await store.close();
    limit.restore();
  });

  test('after a write that failed in an unknown way nothing more is written', async () => {
    const { failNext, restore } = failingCommit();
    const path = freshPath();
    const store = await openStore(path);
    const book = await store.open(SPRING);
    taken(await book.append([payment(0)]));
    failNext();
    expect(await book.append([payment(1)])).toMatchObject({
      refusal: { name: 'store_is_damaged' },
    });
    expect(await book.append([payment(2)])).toMatchObject({
      refusal: { name: 'store_is_damaged' },
    });
    expect(store.damage.join()).toContain('start Cratebook again');
    await store.close();
    restore();
    const again = await openStore(path);
    expect(again.damage).toEqual([]);
    expect(taken(await (await again.open(SPRING)).append([payment(2)])).added).toHaveLength(1);
    await again.close();
  });
});

/** Counts commits of statements prepared from now on. */
function countCommits() {
  let count = 0;
  const { restore } = onCommit(() => {
    count += 1;
  });
  return { commits: () => count, restore };
}

/** Makes one commit fail as a failed sync of the log does (SQLITE_IOERR_FSYNC). */
function failingCommit() {
  let fail = false;
  const { restore } = onCommit(() => {
    if (!fail) return;
    fail = false;
    throw Object.assign(new Error('disk I/O error'), { errcode: 1034 });
  });
  return {
    failNext: () => {
      fail = true;
    },
    restore,
  };
}

function onCommit(before: () => void) {
  const prepare = DatabaseSync.prototype.prepare;
  const spy = vi.spyOn(DatabaseSync.prototype, 'prepare').mockImplementation(function (
    this: DatabaseSync,
    sql,
  ) {
    const statement = prepare.call(this, sql);
    if (sql !== 'commit') return statement;
    const run = statement.run.bind(statement);
    statement.run = () => {
      before();
      return run();
    };
    return statement;
  });
  return { restore: () => spy.mockRestore() };
}

/** Limits the pages of the database that is opened next, which SQLite reports as a full disk. */
function limitPages() {
  let opened: DatabaseSync | undefined;
  const prepare = DatabaseSync.prototype.prepare;
  const spy = vi.spyOn(DatabaseSync.prototype, 'prepare').mockImplementation(function (
    this: DatabaseSync,
    sql,
  ) {
    if (sql === 'commit') opened = this;
    return prepare.call(this, sql);
  });
  return {
    set: (pages: number) => opened?.exec(`pragma max_page_count = ${pages}`),
    restore: () => spy.mockRestore(),
  };
}
