import type { DatabaseSync } from 'node:sqlite';
import { damagedLine, RECORD_COLUMNS, type RecordRow, recordRow, textOf, wholeOf } from './rows.ts';
import { isSealed } from './seal.ts';
import { sqliteFailure } from './sqlite-failure.ts';

/**
 * Looks through a damaged file by every road there is: the table forwards and backwards, the index
 * forwards and backwards, and each key alone. What is sealed is kept for reading; what the index
 * names and no sealed row answers is named as damaged.
 */
export interface Salvage {
  readonly damage: readonly string[];
  /**
   * The sound records of each group in order of arrival, held in memory: the file is not trusted.
   */
  readonly sound: ReadonlyMap<string, readonly RecordRow[]>;
}

type Key = Pick<RecordRow, 'group' | 'season' | 'id' | 'arrival'>;

export function salvage(db: DatabaseSync): Salvage {
  const keys = keysOfIndex(db);
  const rows = rowsOfTable(db);
  const places = new Set(rows.map(placeOf));
  rows.push(
    ...rowsByKey(
      db,
      keys.filter((key) => !places.has(placeOf(key))),
    ),
  );

  const placeByName = new Map(keys.map((key) => [nameOf(key), placeOf(key)]));
  const sound = new Map<string, RecordRow>();
  const damaged: Key[] = [];
  for (const row of rows) {
    const place = placeByName.get(nameOf(row)) ?? placeOf(row);
    if (isSealed(row) && place === placeOf(row)) sound.set(nameOf(row), row);
    else damaged.push(row);
  }
  const lost = keys.filter((key) => !sound.has(nameOf(key)));
  const lostPlaces = new Set(lost.map(placeOf));
  // Where the index still knows the id of a damaged row, its word is better than the row's own.
  const unnamed = damaged.filter((row) => !lostPlaces.has(placeOf(row)));
  const damage = new Set([...lost, ...unnamed].map(damagedLine));
  return { damage: [...damage], sound: byGroup([...sound.values()]) };
}

function placeOf({ group, arrival }: Key): string {
  return `${group} ${arrival}`;
}

function nameOf({ group, season, id }: Key): string {
  return `${group} ${season} ${id}`;
}

function keysOfIndex(db: DatabaseSync): readonly Key[] {
  const keys = new Map<string, Key>();
  for (const way of ['', ' desc']) {
    const order = ['book_group', 'season', 'id'].map((column) => column + way).join(', ');
    const query = `select book_group, season, id, arrival from record indexed by record_by_id
      order by ${order}`;
    readAsFar(db, query, (raw) => {
      const key = {
        group: textOf(raw.book_group),
        season: textOf(raw.season),
        id: textOf(raw.id),
        arrival: wholeOf(raw.arrival),
      };
      keys.set(nameOf(key), key);
    });
  }
  return [...keys.values()];
}

function rowsOfTable(db: DatabaseSync): RecordRow[] {
  const rows = new Map<string, RecordRow>();
  for (const way of ['', ' desc']) {
    const query = `select ${RECORD_COLUMNS} from record order by book_group${way}, arrival${way}`;
    readAsFar(db, query, (raw) => {
      const row = recordRow(raw);
      rows.set(`${placeOf(row)} ${row.id}`, row);
    });
  }
  return [...rows.values()];
}

function rowsByKey(db: DatabaseSync, keys: readonly Key[]): readonly RecordRow[] {
  const find = db.prepare(
    `select ${RECORD_COLUMNS} from record where book_group = ? and arrival = ?`,
  );
  return keys.flatMap(({ group, arrival }) => {
    try {
      const raw = find.get(group, arrival);
      return raw === undefined ? [] : [recordRow(raw)];
    } catch (error) {
      passDamage(error);
      return [];
    }
  });
}

type Raw = Parameters<typeof recordRow>[0];

/** Reads rows until the end or the first page that cannot be read. */
function readAsFar(db: DatabaseSync, query: string, take: (raw: Raw) => void): void {
  try {
    for (const raw of db.prepare(query).iterate()) take(raw);
  } catch (error) {
    passDamage(error);
  }
}

/** Damage is expected here; a number too large for a safe integer is damage as well. */
function passDamage(error: unknown): void {
  if (sqliteFailure(error) === undefined && !(error instanceof RangeError)) throw error;
}

function byGroup(rows: readonly RecordRow[]): ReadonlyMap<string, readonly RecordRow[]> {
  const sorted = rows.toSorted((a, b) => a.arrival - b.arrival);
  return Map.groupBy(sorted, (row) => row.group);
}
