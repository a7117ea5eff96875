import { closeSync, existsSync, openSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { compareCopy, type Heads, headsOf } from './compare-copy.ts';
import { giveName, writeFailure } from './new-file.ts';
import { errorText } from './sqlite-failure.ts';
import { verify } from './verify.ts';

/** A copy of a store while it is in use, proved good before it is called a backup. */
export interface BackupMade {
  readonly path: string;
  readonly records: number;
}

/** Why there is no backup under that name; `detail` is one line. */
export interface BackupRefusal {
  readonly name:
    | 'target_exists'
    | 'target_is_full'
    | 'cannot_write'
    | 'cannot_read'
    | 'store_is_damaged'
    | 'copy_differs';
  readonly detail: string;
}

export type BackupOutcome = Outcome<BackupMade, BackupRefusal>;

/**
 * The copy is made by VACUUM INTO: one statement, so nothing can be written in the middle of it.
 * Node's own `backup` copies in another thread while this one goes on using the connection, and
 * was seen to make appends fail that came in meanwhile.
 */
export function backup(db: DatabaseSync, path: string, damage: readonly string[]): BackupOutcome {
  const [first] = damage;
  if (first !== undefined) return refused({ name: 'store_is_damaged', detail: first });
  if (existsSync(path)) return refused(targetExists(path));
  const part = `${path}.part`;
  try {
    rmSync(part, { force: true });
    closeSync(openSync(part, 'wx', 0o600));
    // Another process may be writing: what it has saved by now is in the copy.
    const heads = headsOf(db);
    db.prepare('vacuum into ?').run(part);
    const records = checked(db, part, heads);
    return records.ok ? keepAs(path, part, records.value) : records;
  } catch (error) {
    return refused(writeRefusal(error));
  } finally {
    rmSync(part, { force: true });
  }
}

/** Verifies the copy and compares it; answers how many records it has. */
function checked(db: DatabaseSync, part: string, heads: Heads): Outcome<number, BackupRefusal> {
  const copy = new DatabaseSync(part, { readOnly: true });
  try {
    const [fault] = verify(copy).damage;
    if (fault !== undefined) return refused({ name: 'copy_differs', detail: fault });
    const compared = compareCopy(db, copy, heads);
    if (compared.difference === undefined) return done(compared.records);
    return refused({ name: 'copy_differs', detail: compared.difference });
  } finally {
    copy.close();
  }
}

function keepAs(path: string, part: string, records: number): BackupOutcome {
  if (!giveName(part, path)) return refused(targetExists(path));
  return done({ path, records });
}

function targetExists(path: string): BackupRefusal {
  return { name: 'target_exists', detail: `${path} is there already; choose a new name` };
}

function writeRefusal(error: unknown): BackupRefusal {
  const failure = writeFailure(error);
  if (failure === undefined) throw error;
  return { name: failure === 'full' ? 'target_is_full' : 'cannot_write', detail: errorText(error) };
}
