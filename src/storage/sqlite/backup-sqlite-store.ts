import { existsSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { refused } from '../../base/outcome.ts';
import { type BackupOutcome, backup } from './backup.ts';
import { stateOf } from './open-database.ts';
import { openSqliteStore } from './open-sqlite-store.ts';
import { errorText, sqliteFailure } from './sqlite-failure.ts';

/**
 * Backs up a store file from outside, whether or not another process has it open: a store at rest
 * is opened and verified first, one in use is read beside its writer.
 */
export async function backupSqliteStore(path: string, target: string): Promise<BackupOutcome> {
  if (!existsSync(path)) return cannotRead(`there is no store ${path}; check its name`);
  const opened = await openSqliteStore(path);
  if (opened.ok) return opened.value.backup(target).finally(() => opened.value.close());
  if (opened.refusal.name !== 'store_in_use') return cannotRead(opened.refusal.message);
  return backupBeside(path, target);
}

const BUSY_MS = 5_000;

function backupBeside(path: string, target: string): BackupOutcome {
  const db = new DatabaseSync(path, { readOnly: true, timeout: BUSY_MS });
  try {
    return stateOf(db) === 'ours'
      ? backup(db, target, [])
      : cannotRead(`${path} is not a store that this Cratebook can read`);
  } catch (error) {
    if (sqliteFailure(error) === undefined) throw error;
    return cannotRead(`${path} cannot be read now (${errorText(error)}); try again`);
  } finally {
    db.close();
  }
}

function cannotRead(detail: string): BackupOutcome {
  return refused({ name: 'cannot_read', detail });
}
