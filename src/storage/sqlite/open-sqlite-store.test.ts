import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { journalSuite } from '../../journal/journal.suite.ts';
import { four, payment, payments, taken } from '../../journal/test-payments.ts';
import { LAYOUT_VERSION } from './layout.ts';
import { openSqliteStore } from './open-sqlite-store.ts';
import { applySettings, settings, settingsNotKept } from './settings.ts';
import { filledStore, freshPath, openStore, SPRING } from './test-store.ts';

journalSuite('SQLite', () => openStore(freshPath()));

describe('settings', () => {
  test('a connection with all of them is fit', () => {
    const db = new DatabaseSync(freshPath());
    applySettings(db);
    expect(settingsNotKept(db)).toEqual([]);
    db.close();
  });

  // Teeth: each setting is put to another value after it was applied, and is named.
  test.each([
    ['journal_mode', 'delete'],
    ['synchronous', 'normal'],
    ['synchronous', 'off'],
    ['foreign_keys', 'off'],
    ['busy_timeout', '4999'],
    ['cell_size_check', 'off'],
    ['wal_autocheckpoint', '0'],
    ['journal_size_limit', '-1'],
  ])('%s = %s is not fit', (pragma, value) => {
    const db = new DatabaseSync(freshPath());
    applySettings(db);
    db.exec(`pragma ${pragma} = ${value}`);
    expect(settingsNotKept(db).join()).toMatch(new RegExp(`^${pragma} is `));
    db.close();
  });

  test('every setting has a case, and a store that cannot keep one does not start', async () => {
    expect(new Set(settings.map(({ pragma }) => pragma)).size).toBe(7);
    // SQLite keeps a database without a file in memory, where there is no log to sync.
    const outcome = await openSqliteStore(':memory:');
    expect(outcome).toMatchObject({ ok: false, refusal: { name: 'settings_not_kept' } });
    for (const left of [':memory:', ':memory:-lock']) rmSync(left, { force: true });
  });
});

describe('opening', () => {
  test('what was appended is there after closing, with its arrivals and headers', async () => {
    const path = await filledStore(50);
    const store = await openStore(path);
    const book = await store.open(SPRING);
    expect(await book.lastArrival()).toBe(50);
    expect((await book.readSince(0)).map(({ record }) => record)).toEqual(payments(50));
    expect(await store.books()).toEqual([{ book: 'cratebook/1', ...SPRING }]);
    expect(taken(await book.append([payment(50)])).added[0]?.arrival).toBe(51);
    await store.close();
  });

  test('only the owner may read the file and its log, even where it was open to all', async () => {
    const path = await filledStore(1);
    const mode = (file: string) => statSync(file).mode & 0o777;
    expect(mode(path)).toBe(0o600);
    chmodSync(path, 0o644);
    const store = await openStore(path);
    await (await store.open(SPRING)).append([payment(9)]);
    const files = readdirSync(dirname(path)).map((name) => join(dirname(path), name));
    expect(files.map((file) => [file, mode(file)])).toEqual(
      ['', '-lock', '-shm', '-wal'].map((end) => [path + end, 0o600]),
    );
    await store.close();
  });

  test('a second handle in this process is refused, and the first goes on', async () => {
    const path = freshPath();
    const store = await openStore(path);
    const book = await store.open(SPRING);
    const second = await openSqliteStore(path);
    expect(second).toMatchObject({ ok: false, refusal: { name: 'store_in_use', path } });
    taken(await book.append(four()));
    await store.close();
    await (await openStore(path)).close();
  });

  test('a second process is refused with a clear line, also when tried again', async () => {
    const path = freshPath();
    const store = await openStore(path);
    await openSqliteStore(path);
    expect(openElsewhere(path)).toBe(
      `${path} is already open in another Cratebook; close that one, or use it ` +
        '(database is locked)',
    );
    await store.close();
    expect(openElsewhere(path)).toBe('opened');
  });

  test('a newer layout is refused and not touched', async () => {
    const path = await filledStore(3);
    const db = new DatabaseSync(path);
    db.exec(`pragma user_version = ${LAYOUT_VERSION + 1}; pragma journal_mode = delete`);
    db.close();
    const before = readFileSync(path);
    expect(await openSqliteStore(path)).toMatchObject({
      ok: false,
      refusal: { name: 'store_is_newer' },
    });
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  test('a database of something else is refused and not touched', async () => {
    const path = freshPath();
    const db = new DatabaseSync(path);
    db.exec('create table other (x)');
    db.close();
    const before = readFileSync(path);
    expect(await openSqliteStore(path)).toMatchObject({
      ok: false,
      refusal: { name: 'not_a_store' },
    });
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  test('a file that is no database, or a folder that is missing, is refused by name', async () => {
    const path = freshPath();
    writeFileSync(path, 'honey 24, jam 12\n'.repeat(400));
    expect(await openSqliteStore(path)).toMatchObject({
      ok: false,
      refusal: { name: 'store_is_unreadable' },
    });
    const nowhere = join(dirname(path), 'nowhere', 'store.sqlite');
    expect(await openSqliteStore(nowhere)).toMatchObject({
      ok: false,
      refusal: { name: 'store_cannot_open' },
    });
    expect(existsSync(dirname(nowhere))).toBe(false);
  });

  test('a file that was made but never filled opens as an empty store', async () => {
    const path = freshPath();
    writeFileSync(path, '');
    const store = await openStore(path);
    expect(await store.books()).toEqual([]);
    await store.close();
  });
});

describe('never changed', () => {
  test('the file itself refuses to change or delete what is stored', async () => {
    const db = new DatabaseSync(await filledStore(3));
    for (const change of [
      "update record set text = '{}' where arrival = 1",
      'delete from record',
      "update book set header = ''",
      'delete from book',
    ]) {
      expect(() => db.exec(change)).toThrow('nothing stored is changed or deleted');
    }
    db.close();
  });
});

/** Opens the store in another process; answers `opened` or the line it was refused with. */
function openElsewhere(path: string): string {
  const module = new URL('open-sqlite-store.ts', import.meta.url).href;
  const script = `const { openSqliteStore } = await import('${module}');
    const outcome = await openSqliteStore('${path}');
    console.log(outcome.ok ? 'opened' : outcome.refusal.message);`;
  return execFileSync(process.execPath, ['--input-type=module', '-e', script], {
    encoding: 'utf8',
  }).trim();
}
