import type { DatabaseSync } from 'node:sqlite';
import { expectedLayout, layoutOf } from './layout.ts';
import { damagedLine, RECORD_COLUMNS, type RecordRow, recordRow, textOf } from './rows.ts';
import { type Salvage, salvage } from './salvage.ts';
import { addToDigest, EMPTY_DIGEST, isSealed, sameBytes, sealOf } from './seal.ts';
import { errorText, sqliteFailure } from './sqlite-failure.ts';

/**
 * Everything about a store file that can be proved from the file alone. A sound file costs one
 * pass over its records; only a damaged one is looked through key by key (salvage.ts).
 */
export interface Verified {
  /** One line for each thing that is wrong; empty when the file is sound. */
  readonly damage: readonly string[];
  /** Where each group's numbering and digest stand. */
  readonly heads: ReadonlyMap<string, GroupHead>;
  /** What can still be read of a damaged file. */
  readonly salvage: Salvage | undefined;
}

export interface GroupHead {
  /** The highest arrival number, which is also how many records the group has. */
  readonly arrival: number;
  readonly digest: Uint8Array;
}

/** SQLite stops listing after this many faults; one is enough to stop writing. */
const FAULTS_MOST = 20;

export function verify(db: DatabaseSync): Verified {
  const heads = new Map<string, GroupHead>();
  const damage = [
    ...collect(() => structureDamage(db)),
    ...collect(() => bookDamage(db)),
    ...collect(() => recordDamage(db, heads)),
  ];
  if (damage.length === 0) return { damage, heads, salvage: undefined };
  const saved = salvage(db);
  return { damage: [...new Set([...saved.damage, ...damage])], heads, salvage: saved };
}

/** What a check found; a page that cannot be read is a finding too. */
function collect(check: () => readonly string[]): readonly string[] {
  try {
    return check();
  } catch (error) {
    if (sqliteFailure(error) === undefined && !(error instanceof RangeError)) throw error;
    return [`the file cannot be read to its end: ${errorText(error)}`];
  }
}

function structureDamage(db: DatabaseSync): readonly string[] {
  const faults = db.prepare(`pragma integrity_check(${FAULTS_MOST})`).all();
  const damage = faults
    .map(({ integrity_check: fault }) => textOf(fault))
    .filter((fault) => fault !== 'ok');
  const orphans = db.prepare('pragma foreign_key_check').all();
  if (orphans.length > 0) damage.push(`${orphans.length} records belong to no book`);
  if (layoutOf(db) !== expectedLayout()) damage.push('the tables are not as they were made');
  return damage;
}

function bookDamage(db: DatabaseSync): readonly string[] {
  const rows = db.prepare('select book_group, season, header, seal from book').all();
  return rows.flatMap((row) => {
    const [group, season] = [textOf(row.book_group), textOf(row.season)];
    const seal = row.seal;
    const kept =
      seal instanceof Uint8Array && sameBytes(seal, sealOf(group, season, textOf(row.header)));
    return kept ? [] : [`the header of book ${group} ${season} is damaged`];
  });
}

function recordDamage(db: DatabaseSync, heads: Map<string, GroupHead>): readonly string[] {
  const damage: string[] = [];
  const rows = db.prepare(`select ${RECORD_COLUMNS} from record order by book_group, arrival`);
  for (const raw of rows.iterate()) {
    const row = recordRow(raw);
    const head = heads.get(row.group) ?? { arrival: 0, digest: EMPTY_DIGEST };
    const digest = addToDigest(head.digest, row.seal);
    const line = lineFor(row, head, digest);
    if (line !== undefined) damage.push(line);
    // Past a damaged or missing row only the row's own word is left to go on from.
    const known = isSealed(row) && row.arrival === head.arrival + 1;
    heads.set(row.group, { arrival: row.arrival, digest: known ? digest : row.groupDigest });
  }
  return damage;
}

function lineFor(row: RecordRow, head: GroupHead, digest: Uint8Array): string | undefined {
  const { id, arrival, group } = row;
  if (!isSealed(row)) return damagedLine(row);
  if (arrival !== head.arrival + 1) {
    return `group ${group}: arrival ${head.arrival} is followed by ${arrival} (record ${id})`;
  }
  if (sameBytes(digest, row.groupDigest)) return undefined;
  return `record ${id} (arrival ${arrival} of group ${group}) has a damaged digest`;
}
