import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../journal/store.ts';
import { payment, payments, taken } from '../../journal/test-payments.ts';
import { backupSqliteStore } from './backup-sqlite-store.ts';
import { compareCopy, headsOf } from './compare-copy.ts';
import { restoreSqliteStore } from './restore.ts';
import { filledStore, freshPath, openStore, SPRING } from './test-store.ts';

describe('backup', () => {
  test('is one file for its owner alone, and restores to the same book', async () => {
    const store = await openStore(await filledStore(200));
    const target = freshPath();
    expect(await store.backup(target)).toEqual({ ok: true, value: { path: target, records: 200 } });
    await store.close();
    expect(readdirSync(dirname(target))).toEqual(['store.sqlite']);
    expect(statSync(target).mode & 0o777).toBe(0o600);

    const backedUp = readFileSync(target);
    const restored = freshPath();
    expect(await restoreSqliteStore(target, restored)).toEqual({
      ok: true,
      value: { path: restored, records: 200 },
    });
    expect(readFileSync(target).equals(backedUp)).toBe(true);
    expect(readdirSync(dirname(restored))).toEqual(['store.sqlite']);
    const again = await openStore(restored);
    expect(await recordsOf(again)).toEqual(payments(200));
    expect(taken(await (await again.open(SPRING)).append([payment(200)])).added).toHaveLength(1);
    await again.close();
  });

  test('is consistent while the store is written to, with all that was acknowledged', async () => {
    const store = await openStore(await filledStore(300));
    const book = await store.open(SPRING);
    const writing = (async () => {
      for (let number = 300; number < 600; number += 1) taken(await book.append([payment(number)]));
    })();
    for (let round = 0; round < 25; round += 1) {
      const acknowledged = await book.lastArrival();
      const target = freshPath();
      expect(taken(await store.backup(target)).records).toBeGreaterThanOrEqual(acknowledged);
      const copy = await openStore(target);
      const records = await recordsOf(copy);
      expect(records).toEqual(payments(records.length));
      await copy.close();
      taken(await book.append([]));
    }
    await writing;
    expect(await book.lastArrival()).toBe(600);
    await store.close();
  });

  test('of a store that another process writes to has all that was saved before', async () => {
    const path = await filledStore(50);
    const store = await openStore(path);
    const book = await store.open(SPRING);
    taken(await book.append([payment(50)]));
    const target = freshPath();
    expect(backUpElsewhere(path, target)).toBe('51 records');
    taken(await book.append([payment(51)]));
    await store.close();
    const copy = await openStore(target);
    expect(await recordsOf(copy)).toEqual(payments(51));
    await copy.close();
    // At rest it is opened and verified; what is not there is told.
    expect(taken(await backupSqliteStore(path, freshPath())).records).toBe(52);
    expect(await backupSqliteStore(`${path}-missing`, freshPath())).toMatchObject({
      refusal: { name: 'cannot_read' },
    });
  });

  test('what came in while the copy was made may be in it or not, and nothing else', async () => {
    const original = new DatabaseSync(await filledStore(20));
    const shorter = new DatabaseSync(await filledStore(18));
    const compared = (last: number) =>
      compareCopy(original, shorter, new Map([[SPRING.group, last]])).difference;
    expect(compared(18)).toBe(undefined);
    expect(compared(19)).toBe(`record ${payment(18).id} differs`);
    original.close();
    shorter.close();
  });

  test('teeth: a copy with a changed, missing or added record is not called good', async () => {
    for (const change of [
      "update record set text = replace(text, 'cash', 'card') where arrival = 9",
      'delete from record where arrival = 9',
      `insert into record select book_group, 99, season, 'x', text, seal, group_digest
       from record where arrival = 9`,
      "update book set header = replace(header, 'spring', 'autumn')",
    ]) {
      const path = await filledStore(20);
      const changed = freshPath();
      const copy = new DatabaseSync(path);
      copy.exec(`vacuum into '${changed}'`);
      copy.close();
      const original = new DatabaseSync(path);
      const other = new DatabaseSync(changed);
      const heads = headsOf(original);
      expect(compareCopy(original, other, heads)).toEqual({ records: 20, difference: undefined });
      for (const name of ['record_no_update', 'record_no_delete', 'book_no_update']) {
        other.exec(`drop trigger ${name}`);
      }
      other.exec(change);
      expect(compareCopy(original, other, heads).difference).toMatch(/differs|not in the original/);
      original.close();
      other.close();
    }
  });

  test('never writes over a file, and leaves nothing behind where it cannot write', async () => {
    const store = await openStore(await filledStore(5));
    const target = freshPath();
    writeFileSync(target, 'kept');
    expect(await store.backup(target)).toMatchObject({ refusal: { name: 'target_exists' } });
    expect(readFileSync(target, 'utf8')).toBe('kept');
    const nowhere = join(dirname(target), 'nowhere', 'backup.sqlite');
    expect(await store.backup(nowhere)).toMatchObject({ refusal: { name: 'cannot_write' } });
    expect(readdirSync(dirname(target))).toEqual(['store.sqlite']);
    await store.close();
  });
});

describe('restore', () => {
  test('refuses a target that is there', async () => {
    const backup = await backupOf(5);
    const target = freshPath();
    writeFileSync(target, 'kept');
    expect(await restoreSqliteStore(backup, target)).toMatchObject({
      refusal: { name: 'target_exists' },
    });
    expect(readFileSync(target, 'utf8')).toBe('kept');
  });

  test('refuses a backup that is missing, damaged, something else, or a store in use', async () => {
    const missing = freshPath();
    const damaged = await backupOf(50);
    writeFileSync(damaged, turnText(readFileSync(damaged), '"cash"'));
    const other = freshPath();
    writeFileSync(other, 'honey 24, jam 12\n'.repeat(400));
    const used = await filledStore(5);
    const store = await openStore(used);
    taken(await (await store.open(SPRING)).append([payment(5)]));
    for (const [from, name] of [
      [missing, 'backup_is_missing'],
      [damaged, 'backup_is_damaged'],
      [other, 'backup_is_unreadable'],
      [used, 'backup_is_in_use'],
    ] as const) {
      const target = freshPath();
      expect(await restoreSqliteStore(from, target)).toMatchObject({ refusal: { name } });
      expect(readdirSync(dirname(target))).toEqual([]);
    }
    await store.close();
    expect(existsSync(missing)).toBe(false);
  });
});

function backUpElsewhere(path: string, target: string): string {
  const module = new URL('backup-sqlite-store.ts', import.meta.url).href;
  const script = `const { backupSqliteStore } = await import('${module}');
    const outcome = await backupSqliteStore('${path}', '${target}');
    console.log(outcome.ok ? outcome.value.records + ' records' : outcome.refusal.detail);`;
  const run = [process.execPath, ['--input-type=module', '-e', script]] as const;
  return execFileSync(...run, { encoding: 'utf8' }).trim();
}

async function recordsOf(store: Store) {
  const book = await store.open(SPRING);
  return (await book.readSince(0)).map(({ record }) => record);
}

async function backupOf(count: number): Promise<string> {
  const store = await openStore(await filledStore(count));
  const path = freshPath();
  taken(await store.backup(path));
  await store.close();
  return path;
}

/** Wherever the text stands: pages keep old copies in their free space. */
function turnText(file: Buffer, text: string): Buffer {
  return Buffer.from(file.toString('latin1').replaceAll(text, text.toUpperCase()), 'latin1');
}
