import { copyFileSync, writeFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { payment, payments, taken } from '../../journal/test-payments.ts';
import { readSqliteStore } from './read-sqlite-store.ts';
import { filledStore, freshPath, openStore, SPRING } from './test-store.ts';

test('a store in use is read as it was at that moment, and goes on being written', async () => {
  const path = await filledStore(20);
  const store = await openStore(path);
  const book = await store.open(SPRING);
  taken(await book.append([payment(20)]));
  const reading = taken(await readSqliteStore(path));
  expect(reading.damage).toEqual([]);
  expect(reading.books).toEqual([{ book: 'cratebook/1', ...SPRING }]);
  expect(await reading.recordsOf(SPRING)).toEqual(payments(21));
  taken(await book.append([payment(21)]));
  expect(await reading.recordsOf(SPRING)).toHaveLength(21);
  await reading.close();
  expect(await book.lastArrival()).toBe(22);
  await store.close();
});

test('a store at rest is read too, and another book of it has no records', async () => {
  const reading = taken(await readSqliteStore(await filledStore(5)));
  expect(await reading.recordsOf(SPRING)).toEqual(payments(5));
  await reading.close();
});

test('damage of a store in use is named as by its writer', async () => {
  const path = await filledStore(5);
  const store = await openStore(path);
  const other = new DatabaseSync(path);
  const triggers = other
    .prepare("select name, sql from sqlite_schema where type = 'trigger'")
    .all();
  for (const { name } of triggers) other.exec(`drop trigger ${name}`);
  other.exec("update record set text = replace(text, 'cash', 'card') where arrival = 3");
  for (const { sql } of triggers) other.exec(String(sql));
  other.close();
  const reading = taken(await readSqliteStore(path));
  expect(reading.damage.join()).toMatch(/arrival 3/);
  await reading.close();
  await store.close();
});

test('a log that was damaged earlier is named also beside the writer', async () => {
  const path = await filledStore(5);
  writeFileSync(`${path}-wal-damaged`, '');
  const store = await openStore(path);
  const reading = taken(await readSqliteStore(path));
  expect(reading.damage).toEqual(store.damage);
  expect(reading.damage.join()).toContain('records are missing');
  await reading.close();
  await store.close();
});

test('a file that is no store is refused as before', async () => {
  const path = freshPath();
  const foreign = new DatabaseSync(path);
  foreign.exec('create table other (x)');
  foreign.close();
  const copy = freshPath();
  copyFileSync(path, copy);
  expect(await readSqliteStore(copy)).toMatchObject({ refusal: { name: 'not_a_store' } });
});
