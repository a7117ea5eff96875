/**
 * What SQLite's result codes mean for a person (sqlite.org/rescode.html). Only these come from the
 * machine; any other is a bug of ours and is thrown on.
 */
export type SqliteFailure = 'full' | 'in-use' | 'damaged' | 'disk-failed' | 'cannot-open';

const BUSY = 5;
const READONLY = 8;
const IOERR = 10;
const CORRUPT = 11;
const FULL = 13;
const CANTOPEN = 14;
const NOTADB = 26;
/** A refused write: past a size limit or quota, the disk is full in all but name. */
const IOERR_WRITE = 778;

/**
 * Which failure an error thrown by the engine stands for; undefined when it is not of the engine.
 */
export function sqliteFailure(error: unknown): SqliteFailure | undefined {
  if (!(error instanceof Error) || !('errcode' in error)) return undefined;
  const code = Number(error.errcode);
  if (code === IOERR_WRITE) return 'full';
  switch (code & 0xff) {
    case FULL:
      return 'full';
    case BUSY:
      return 'in-use';
    case CORRUPT:
    case NOTADB:
      return 'damaged';
    case IOERR:
      return 'disk-failed';
    case CANTOPEN:
    case READONLY:
      return 'cannot-open';
    default:
      return undefined;
  }
}

export function errorText(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
