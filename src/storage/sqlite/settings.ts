import type { DatabaseSync } from 'node:sqlite';

/**
 * The settings that durability rests on. They belong to the connection, not to the file, so they
 * are set at every open and read back: a store that does not keep them does not start.
 * Meaning of each: sqlite.org/pragma.html.
 */
interface Setting {
  readonly pragma: string;
  readonly set: string | number;
  readonly kept: (value: unknown) => boolean;
}

const BUSY_MS = 5_000;
const WAL_PAGES = 4_000;
const WAL_BYTES_KEPT = 64 * 1024 * 1024;

export const settings: readonly Setting[] = [
  // Readers and one writer; a commit is one write and one sync of the log.
  { pragma: 'journal_mode', set: 'wal', kept: (value) => value === 'wal' },
  // FULL: the log is synced at every commit. NORMAL would lose the last commits in a power cut.
  { pragma: 'synchronous', set: 'full', kept: (value) => value === 2 },
  { pragma: 'foreign_keys', set: 'on', kept: (value) => value === 1 },
  { pragma: 'busy_timeout', set: BUSY_MS, kept: (value) => Number(value) >= BUSY_MS },
  // Damaged pages are noticed when they are read.
  { pragma: 'cell_size_check', set: 'on', kept: (value) => value === 1 },
  { pragma: 'wal_autocheckpoint', set: WAL_PAGES, kept: (value) => value === WAL_PAGES },
  { pragma: 'journal_size_limit', set: WAL_BYTES_KEPT, kept: (value) => value === WAL_BYTES_KEPT },
];

export function applySettings(db: DatabaseSync): void {
  for (const { pragma, set } of settings) db.exec(`pragma ${pragma} = ${set}`);
}

/**
 * The settings that the connection does not keep, as `synchronous is 1`; empty when all is well.
 */
export function settingsNotKept(db: DatabaseSync): readonly string[] {
  return settings.flatMap(({ pragma, kept }) => {
    const [value] = Object.values(db.prepare(`pragma ${pragma}`).get() ?? {});
    return kept(value) ? [] : [`${pragma} is ${String(value)}`];
  });
}
