import { closeSync, existsSync, fsyncSync, openSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import { type SqliteFailure, sqliteFailure } from './sqlite-failure.ts';

/** New files that are there, whole, after a power cut, or not at all. */

/** Makes the names in a file's folder durable: a new file is only safe once its name is. */
export function syncFolderOf(path: string): void {
  syncPath(dirname(path), 'r');
}

/**
 * Gives a finished file its name once its content is on the disk. Answers false, and leaves both
 * as they are, where the name is taken.
 */
export function giveName(part: string, path: string): boolean {
  syncPath(part, 'r+');
  if (existsSync(path)) return false;
  renameSync(part, path);
  syncFolderOf(path);
  return true;
}

function syncPath(path: string, mode: 'r' | 'r+'): void {
  const handle = openSync(path, mode);
  fsyncSync(handle);
  closeSync(handle);
}

/** What a failure of the engine or of the file system stands for; undefined for a bug of ours. */
export function writeFailure(error: unknown): SqliteFailure | undefined {
  const failure = sqliteFailure(error);
  if (failure !== undefined) return failure;
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return undefined;
  const full = ['ENOSPC', 'EDQUOT', 'EFBIG'].includes(String(error.code));
  return full ? 'full' : 'cannot-open';
}
