import { readFileSync, writeFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalText } from '../../base/canonical-text.ts';
import { seeded } from '../../base/seeded.ts';
import { payment, payments } from '../../journal/test-payments.ts';
import { openSqliteStore } from './open-sqlite-store.ts';
import { filledStore, freshPath, openStore, SPRING } from './test-store.ts';

/**
 * One bit of a store file is turned, and what the store says is held against what the file says
 * when it is read without any check.
 */
const RECORDS = 120;
const FLIPS = 400;
const PAGE_BYTES = 4096;

interface Flip {
  /** The byte that was turned. */
  readonly at: number;
  /** Ids whose record the flip changed, lost or made unreadable. */
  readonly changed: readonly string[];
  readonly refused: boolean;
  readonly damage: readonly string[];
  /** Whether SQLite's own check alone would have noticed. */
  readonly noticedBySqlite: boolean;
  /** Canonical texts that the store still gives out. */
  readonly readable: ReadonlySet<string>;
}

describe('one turned bit', () => {
  let flips: readonly Flip[];
  beforeAll(async () => {
    flips = await turnBits();
  });
  const changing = () => flips.filter(({ changed }) => changed.length > 0);

  test('enough of the flips change a record for the rest to mean something', () => {
    expect(changing().length).toBeGreaterThan(FLIPS / 3);
  });

  test('every flip that changes a record is told', () => {
    const untold = changing().filter(({ damage, refused }) => !refused && damage.length === 0);
    expect(untold).toEqual([]);
  });

  test('each record is read back word for word or named, and nothing else is read', () => {
    const records = payments(RECORDS).map((record) => [record.id, canonicalText(record)] as const);
    const whole = new Set(records.map(([, text]) => text));
    for (const { damage, readable } of flips.filter((flip) => !flip.refused)) {
      expect([...readable].filter((text) => !whole.has(text))).toEqual([]);
      const told = damage.join('\n');
      const gone = records.filter(([id, text]) => !readable.has(text) && !told.includes(id));
      expect(gone).toEqual([]);
    }
  });

  test('only a flip in the first page, which describes the file, keeps it from opening', () => {
    expect(flips.filter(({ at, refused }) => refused && at >= PAGE_BYTES)).toEqual([]);
  });

  test('teeth: the check of the engine alone misses flips that change a record', () => {
    const missed = changing().filter(({ noticedBySqlite }) => !noticedBySqlite);
    expect(missed.length).toBeGreaterThan(FLIPS / 10);
  });
});

describe('a damaged store', () => {
  test('writes nothing more, and goes on reading what is sound', async () => {
    const path = await filledStore(20);
    const db = new DatabaseSync(path);
    db.exec(`drop trigger record_no_update;
      update record set text = replace(text, '"kind":"payment"', '"kind":"Payment"')
      where arrival = 7`);
    db.close();
    const store = await openStore(path);
    const book = await store.open(SPRING);
    const { id } = payment(6);
    expect(store.damage[0]).toBe(`record ${id} (arrival 7 of group wrenfield) is damaged`);
    expect(store.damage.join()).toContain('the tables are not as they were made');
    expect(await book.append([payment(20)])).toMatchObject({
      ok: false,
      refusal: { name: 'store_is_damaged', detail: store.damage[0] },
    });
    const arrivals = (await book.readSince(4, 4)).map(({ arrival }) => arrival);
    expect(arrivals).toEqual([5, 6, 8, 9]);
    expect(await book.lastArrival()).toBe(20);
    expect(await store.backup(freshPath())).toMatchObject({
      ok: false,
      refusal: { name: 'store_is_damaged' },
    });
    await store.close();
  });

  test('a record that was taken out whole is missed', async () => {
    const path = await filledStore(20);
    const db = new DatabaseSync(path);
    const trigger = db
      .prepare("select sql from sqlite_schema where name = 'record_no_delete'")
      .get();
    db.exec(`drop trigger record_no_delete; delete from record where arrival = 7`);
    db.exec(String(trigger?.sql));
    db.close();
    const store = await openStore(path);
    expect(store.damage).toEqual([
      `group wrenfield: arrival 6 is followed by 8 (record ${payment(7).id})`,
    ]);
    await store.close();
  });
});

async function turnBits(): Promise<readonly Flip[]> {
  const whole = readFileSync(await filledStore(RECORDS));
  const before = readWithoutSeals(whole).rows;
  expect(before.size).toBe(RECORDS);
  const random = seeded(20_270_201);
  const flips: Flip[] = [];
  for (let flip = 0; flip < FLIPS; flip += 1) {
    const turned = Buffer.from(whole);
    const at = random.whole(0, whole.length - 1);
    turned[at] = (turned[at] ?? 0) ^ (1 << random.whole(0, 7));
    flips.push({ at, ...(await look(turned, before)) });
  }
  return flips;
}

async function look(file: Buffer, before: ReadonlyMap<string, string>): Promise<Omit<Flip, 'at'>> {
  const { rows, fault } = readWithoutSeals(file);
  const changed = [...before].filter(([id, row]) => rows.get(id) !== row).map(([id]) => id);
  const noticedBySqlite = fault !== 'ok';
  const path = freshPath();
  writeFileSync(path, file);
  const outcome = await openSqliteStore(path);
  if (!outcome.ok) {
    return { changed, refused: true, damage: [], noticedBySqlite, readable: new Set() };
  }
  const store = outcome.value;
  const book = await store.open(SPRING);
  const texts = (await book.readSince(0)).map(({ record }) => canonicalText(record));
  await store.close();
  return {
    changed,
    refused: false,
    damage: store.damage,
    noticedBySqlite,
    readable: new Set(texts),
  };
}

/** Every row as a reader without seals finds it, and what SQLite's own check says of the file. */
function readWithoutSeals(file: Buffer): { rows: ReadonlyMap<string, string>; fault: unknown } {
  const rows = new Map<string, string>();
  const path = freshPath();
  writeFileSync(path, file);
  const db = new DatabaseSync(path);
  const find = unlessDamaged(() =>
    db.prepare('select * from record where book_group = ? and arrival = ?'),
  );
  for (let arrival = 1; arrival <= RECORDS; arrival += 1) {
    const row = unlessDamaged(() => find?.get(SPRING.group, arrival));
    if (row !== undefined) rows.set(payment(arrival - 1).id, rowText(row));
  }
  const check = unlessDamaged(() => db.prepare('pragma integrity_check').get());
  db.close();
  return { rows, fault: check?.integrity_check };
}

function unlessDamaged<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}

function rowText(row: Record<string, unknown>): string {
  return Object.values(row)
    .map((value) => (value instanceof Uint8Array ? Buffer.from(value).toString('hex') : value))
    .join('|');
}
