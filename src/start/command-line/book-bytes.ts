import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { messageOf } from '../message-of.ts';
import type { Outlet } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';
import { isStoreStart, readStoreBook } from './store-book.ts';

const PIECE = 1024 * 1024;
const PROGRESS_FROM = 20 * PIECE;

/** The bytes of a book file, of a book in a store, or of standard input, piece by piece. */
export function bookBytes(
  path: string,
  given: Arguments,
  outlet: Outlet,
): Iterable<Uint8Array> | AsyncIterable<Uint8Array> {
  if (path === '-') return outlet.input;
  if (!isStoreStart(firstBytes(path))) return fileBytes(path, outlet);
  return readStoreBook(path, { group: given.get('group'), season: given.get('season') });
}

export function sourceName(path: string): string {
  return path === '-' ? 'standard input' : path;
}

function firstBytes(path: string): Uint8Array {
  const file = openFile(path);
  try {
    const start = new Uint8Array(16);
    return start.subarray(0, readSync(file, start, 0, start.length, 0));
  } catch (error) {
    throw new Stop(`${path}: cannot be read: ${messageOf(error)}`);
  } finally {
    closeSync(file);
  }
}

export function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

function* fileBytes(path: string, outlet: Outlet): Generator<Uint8Array> {
  const file = openFile(path);
  try {
    const { size } = fstatSync(file);
    const piece = new Uint8Array(PIECE);
    for (let taken = 0; ; ) {
      const length = readSync(file, piece);
      if (length === 0) return;
      taken += length;
      if (size > PROGRESS_FROM) outlet.progress(`Reading ${Math.floor((taken / size) * 100)} %`);
      yield piece.subarray(0, length);
    }
  } finally {
    closeSync(file);
    outlet.progress('');
  }
}

function openFile(path: string): number {
  try {
    const file = openSync(path, 'r');
    if (!fstatSync(file).isDirectory()) return file;
    closeSync(file);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT') throw new Stop(`${path}: there is no such file; check its name`);
    throw new Stop(`${path}: cannot be read: ${messageOf(error)}`);
  }
  throw new Stop(`${path}: is a folder, wanted a book file`);
}
