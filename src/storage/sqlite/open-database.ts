import { chmodSync, closeSync, existsSync, openSync, statSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { APPLICATION_ID, LAYOUT_VERSION, makeLayout } from './layout.ts';
import { logDamage } from './log-damage.ts';
import { syncFolderOf, writeFailure } from './new-file.ts';
import { applySettings, settingsNotKept } from './settings.ts';
import { errorText } from './sqlite-failure.ts';

/**
 * Opens the one file of a store so that what is acknowledged survives, or refuses to start. What
 * the records in it are worth is looked at afterwards (verify.ts).
 *
 * Never open the store's file by other means in this process while it is open: closing any handle
 * of a file lets go of all POSIX locks on it (sqlite.org/howtocorrupt.html, section 2.2).
 */

/** Why a store was not opened; `message` is one line with what to do next. */
export interface OpenRefusal {
  readonly name:
    | 'store_in_use'
    | 'store_is_newer'
    | 'not_a_store'
    | 'store_is_unreadable'
    | 'store_is_full'
    | 'store_cannot_open'
    | 'settings_not_kept';
  readonly path: string;
  readonly message: string;
}

export interface OpenDatabase {
  readonly db: DatabaseSync;
  /** Lets others write the store; the system does it where this process is killed. */
  readonly letGo: () => void;
  /** What was lost before this opening; see log-damage.ts. */
  readonly damage: readonly string[];
}

/** Only the owner of the data may read or write it: children's names are in it. */
const OWNER_ONLY = 0o600;

export function openDatabase(path: string): Outcome<OpenDatabase, OpenRefusal> {
  const open: DatabaseSync[] = [];
  const opening = (file: string): DatabaseSync => {
    keepToOwner(file);
    // No waiting here: a file that is in use is told at once. Waiting is set with the settings.
    const db = new DatabaseSync(file, { timeout: 0 });
    open.push(db);
    return db;
  };
  const outcome = tryTo(path, () => {
    const db = opening(path);
    const state = stateOf(db);
    if (state === 'newer') return refused(refusal('store_is_newer', path));
    if (state === 'foreign') return refused(refusal('not_a_store', path));
    const lock = opening(`${path}-lock`);
    // Held until the end. Others may read meanwhile, so a store in use can be backed up.
    lock.exec('pragma journal_mode = memory; begin exclusive');
    const prepared = prepare(db, path);
    return prepared.ok ? done({ db, letGo: () => lock.close(), damage: prepared.value }) : prepared;
  });
  if (!outcome.ok) for (const db of open) db.close();
  return outcome;
}

function tryTo<T>(path: string, open: () => Outcome<T, OpenRefusal>): Outcome<T, OpenRefusal> {
  try {
    return open();
  } catch (error) {
    return refused(refusalOf(error, path));
  }
}

/** With the lock held; answers what was lost. */
function prepare(db: DatabaseSync, path: string): Outcome<readonly string[], OpenRefusal> {
  const lost = logDamage(path);
  applySettings(db);
  // Asked again: another process may have made the tables until the lock was ours.
  if (stateOf(db) === 'empty') makeLayout(db);
  syncFolderOf(path);
  const notKept = settingsNotKept(db);
  if (notKept.length > 0) return refused(refusal('settings_not_kept', path, notKept.join(', ')));
  return done(lost === undefined ? [] : [lost]);
}

/** Read before anything is set, so that a file that is not ours is left as it is. */
export function stateOf(db: DatabaseSync): 'ours' | 'empty' | 'newer' | 'foreign' {
  const application = pragma(db, 'application_id');
  const version = pragma(db, 'user_version');
  if (application === APPLICATION_ID) return version > LAYOUT_VERSION ? 'newer' : 'ours';
  const parts = Number(db.prepare('select count(*) as n from sqlite_schema').get()?.n);
  return application === 0 && version === 0 && parts === 0 ? 'empty' : 'foreign';
}

function pragma(db: DatabaseSync, name: string): number {
  return Number(db.prepare(`pragma ${name}`).get()?.[name]);
}

/** Makes the file where it is new, and narrows who may read it. Never opens one that is there. */
function keepToOwner(path: string): void {
  if (!existsSync(path)) closeSync(openSync(path, 'wx', OWNER_ONLY));
  if ((statSync(path).mode & 0o777) !== OWNER_ONLY) chmodSync(path, OWNER_ONLY);
}

function refusalOf(error: unknown, path: string): OpenRefusal {
  const failure = writeFailure(error);
  if (failure === undefined) throw error;
  return refusal(NAMES[failure], path, errorText(error));
}

const NAMES = {
  full: 'store_is_full',
  'in-use': 'store_in_use',
  damaged: 'store_is_unreadable',
  'disk-failed': 'store_cannot_open',
  'cannot-open': 'store_cannot_open',
} as const;

const WORDS: Readonly<Record<OpenRefusal['name'], string>> = {
  store_in_use: 'is already open in another Cratebook; close that one, or use it',
  store_is_newer: 'was written by a newer Cratebook; install that one to open it',
  not_a_store: 'is not a Cratebook store; choose another file',
  store_is_unreadable: 'cannot be read; keep it as it is and restore the newest backup beside it',
  store_is_full: 'cannot be opened: the disk is full; free some space and start again',
  store_cannot_open: 'cannot be opened; check that the folder is there and yours to write',
  settings_not_kept: 'does not keep the settings that make saving safe; move it to a local disk',
};

function refusal(name: OpenRefusal['name'], path: string, detail = ''): OpenRefusal {
  return { name, path, message: `${path} ${WORDS[name]}${detail === '' ? '' : ` (${detail})`}` };
}
