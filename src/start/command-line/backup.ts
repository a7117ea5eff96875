import { existsSync } from 'node:fs';
import { defaultDataFolder, storeFile } from '../data-folder.ts';
import type { Command } from './command.ts';
import { type Outlet, writeJson } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';

export const backup: Command = {
  options: { data: { type: 'string' }, out: { type: 'string' } },
  takes: [],
  help: `A copy of the store with all its books, read back and compared record by record.

  --out FILE   the copy, which must not be there yet
  --data DIR   the folder that keeps the books; without it, CRATEBOOK_DATA or the user's own
  --json       {"path":"…","records":n}

Examples
  cratebook backup --out /media/stick/books-2027-03-01.sqlite`,
  run: async (given, outlet) => {
    const out = given.need('out', 'the file for the copy');
    const store = storeOf(given, outlet);
    if (!existsSync(store)) throw new Stop(`${store}: there is no store; check --data`);
    const { backupSqliteStore } = await import('../../storage/sqlite/backup-sqlite-store.ts');
    const made = await backupSqliteStore(store, out);
    if (!made.ok) throw new Stop(`no backup was made: ${made.refusal.detail}`);
    if (given.has('json')) await writeJson(outlet, made.value);
    else outlet.note(`${made.value.records} records written to ${out}, read back and compared`);
    return 0;
  },
};

export const restore: Command = {
  options: { data: { type: 'string' } },
  takes: ['FILE'],
  help: `A new store from a backup, verified and compared; nothing is ever written over.

  --data DIR   a folder without books; without it, CRATEBOOK_DATA or the user's own
  --json       {"path":"…","records":n}

Examples
  cratebook restore /media/stick/books-2027-03-01.sqlite --data ~/books-again`,
  run: async (given, outlet) => {
    const [from = ''] = given.positionals;
    const { makeDataFolder } = await import('../data-folder.ts');
    const folder = folderOf(given, outlet);
    makeDataFolder(folder);
    const { restoreSqliteStore } = await import('../../storage/sqlite/restore.ts');
    const restored = await restoreSqliteStore(from, storeFile(folder));
    if (!restored.ok) throw new Stop(`nothing was restored: ${restored.refusal.detail}`);
    const { path, records } = restored.value;
    if (given.has('json')) await writeJson(outlet, { path, records });
    else outlet.note(`${records} records restored to ${path}`);
    return 0;
  },
};

function storeOf(given: Arguments, outlet: Outlet): string {
  return storeFile(folderOf(given, outlet));
}

function folderOf(given: Arguments, outlet: Outlet): string {
  return given.get('data') ?? defaultDataFolder(outlet.environment);
}
