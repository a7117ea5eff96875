import { chmodSync, constants, copyFileSync, existsSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { compareCopy, headsOf } from './compare-copy.ts';
import { giveName, writeFailure } from './new-file.ts';
import { stateOf } from './open-database.ts';
import { errorText } from './sqlite-failure.ts';
import { verify } from './verify.ts';

/** A new store file from a backup, verified and compared before it gets its name. */
export interface Restored {
  readonly path: string;
  readonly records: number;
}

/** Why nothing was restored; no file was made. `detail` is one line. */
export interface RestoreRefusal {
  readonly name:
    | 'target_exists'
    | 'target_is_full'
    | 'cannot_write'
    | 'backup_is_missing'
    | 'backup_is_in_use'
    | 'backup_is_damaged'
    | 'backup_is_unreadable'
    | 'copy_differs';
  readonly detail: string;
}

export type RestoreOutcome = Outcome<Restored, RestoreRefusal>;

/** Reads the backup, never writes to it; never writes over a file that is there. */
export async function restoreSqliteStore(from: string, to: string): Promise<RestoreOutcome> {
  const why = whyNot(from, to);
  if (why !== undefined) return refused(why);
  const part = `${to}.part`;
  try {
    rmSync(part, { force: true });
    copyFileSync(from, part, constants.COPYFILE_EXCL);
    chmodSync(part, 0o600);
    const records = checkCopy(from, part);
    if (!records.ok) return records;
    return giveName(part, to)
      ? done({ path: to, records: records.value })
      : refused(targetExists(to));
  } catch (error) {
    return refused(failureRefusal(error, from));
  } finally {
    for (const file of [part, `${part}-wal`, `${part}-shm`]) rmSync(file, { force: true });
  }
}

function failureRefusal(error: unknown, from: string): RestoreRefusal {
  const failure = writeFailure(error);
  if (failure === undefined) throw error;
  const detail = errorText(error);
  if (failure === 'damaged') {
    return { name: 'backup_is_unreadable', detail: `${from} cannot be read (${detail})` };
  }
  return { name: failure === 'full' ? 'target_is_full' : 'cannot_write', detail };
}

function whyNot(from: string, to: string): RestoreRefusal | undefined {
  if (existsSync(to)) return targetExists(to);
  if (!existsSync(from)) {
    return { name: 'backup_is_missing', detail: `there is no file ${from}; check its name` };
  }
  if (!existsSync(`${from}-wal`)) return undefined;
  // Part of a store in use is in its log: a copy of the one file would lose it.
  const detail = `${from} is a store in use, not a backup; make one with the command backup`;
  return { name: 'backup_is_in_use', detail };
}

function targetExists(path: string): RestoreRefusal {
  return { name: 'target_exists', detail: `${path} is there already; choose a new name` };
}

/** Verifies the copy and compares all of it with the backup; answers how many records it has. */
function checkCopy(from: string, part: string): Outcome<number, RestoreRefusal> {
  const copy = new DatabaseSync(part, { readOnly: true });
  const original = new DatabaseSync(from, { readOnly: true });
  try {
    const why = stateRefusal(copy, from);
    if (why !== undefined) return refused(why);
    const [fault] = verify(copy).damage;
    if (fault !== undefined) return refused({ name: 'backup_is_damaged', detail: fault });
    const { records, difference } = compareCopy(original, copy, headsOf(original));
    if (difference === undefined) return done(records);
    return refused({ name: 'copy_differs', detail: difference });
  } finally {
    original.close();
    copy.close();
  }
}

function stateRefusal(copy: DatabaseSync, from: string): RestoreRefusal | undefined {
  const words = {
    empty: `${from} is empty; choose another file`,
    foreign: `${from} is not a Cratebook backup; choose another file`,
    newer: `${from} was written by a newer Cratebook; install that one to restore it`,
  };
  const state = stateOf(copy);
  return state === 'ours' ? undefined : { name: 'backup_is_unreadable', detail: words[state] };
}
