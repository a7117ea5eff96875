import { chmodSync, existsSync, mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** Where this machine keeps its books: one folder, with one SQLite file. */
export function defaultDataFolder(environment: NodeJS.ProcessEnv): string {
  if (environment.CRATEBOOK_DATA) return environment.CRATEBOOK_DATA;
  const share = environment.XDG_DATA_HOME || join(homedir(), '.local', 'share');
  return join(share, 'cratebook');
}

/** Names of children and what families owe: for the user who runs this, and nobody else. */
export function makeDataFolder(folder: string): void {
  if (existsSync(folder)) return;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
}

/** The store's file in a data folder. */
export function storeFile(folder: string): string {
  return join(folder, 'books.sqlite');
}
