import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';
import { findingLine } from '../../intake/finding.ts';
import { QuickReader } from '../../intake/quick/quick-reader.ts';
import { type BookRead, BookReader } from '../../intake/read-book.ts';
import { type AcceptedBook, acceptBook } from '../../rules/accept-book.ts';
import { type BalancedBook, quickBook } from '../../rules/quick-book.ts';
import { messageOf } from '../message-of.ts';
import type { Outlet } from './outlet.ts';
import type { Arguments, OptionTable } from './read-arguments.ts';
import { Stop } from './stop.ts';
import { isStoreStart, readStoreBook } from './store-book.ts';
import { letYoungSpaceGrow } from './young-space.ts';

/** Which book of a store file that holds several. */
export const bookOptions: OptionTable = {
  group: { type: 'string' },
  season: { type: 'string' },
};

export const BOOK_HELP = `BOOK is a book file (JSON Lines), - for standard input, or a store file;
  where a store file holds several books: --group ID --season ID`;

const PIECE = 1024 * 1024;
const PROGRESS_FROM = 20 * PIECE;

/** Opens a book to answer from it. A book with any error is not answered from. */
export async function openBook(given: Arguments, outlet: Outlet): Promise<AcceptedBook> {
  const [path = ''] = given.positionals;
  const read = await readBookAt(path, given, outlet);
  const accepted = acceptBook(read);
  if (accepted.ok) return accepted.value;
  const source = sourceName(path);
  const [first] = accepted.refusal;
  if (first === undefined) throw new Stop(`${source}: not a book`);
  throw new Stop(findingLine(first, source) + andMore(accepted.refusal.length + read.omitted - 1));
}

/**
 * Opens a book for its balances alone: the quick way, which is sure of nearly every book that
 * nothing refuses. Of any other the slow way says what is wrong.
 */
export async function openBalances(given: Arguments, outlet: Outlet): Promise<BalancedBook> {
  const [path = ''] = given.positionals;
  letYoungSpaceGrow(false);
  const reader = new QuickReader(path === '-' ? 0 : sizeOf(path));
  const kept: Uint8Array[] = [];
  for await (const bytes of bookBytes(path, given, outlet)) {
    // Standard input cannot be read twice.
    if (path === '-') kept.push(bytes);
    reader.push(bytes);
    if (path !== '-' && !reader.isSure) break;
  }
  const read = reader.end();
  const book = read === undefined ? undefined : quickBook(read);
  if (book !== undefined) return book;
  letYoungSpaceGrow(true);
  const again = { ...outlet, input: path === '-' ? inOrder(kept) : outlet.input };
  return (await openBook(given, again)).ledger;
}

/** The book's lines and what there is to tell about them, errors too. */
export async function readBookAt(
  path: string,
  given: Arguments,
  outlet: Outlet,
): Promise<BookRead> {
  const reader = new BookReader();
  for await (const bytes of bookBytes(path, given, outlet)) reader.push(bytes);
  return reader.end();
}

/** The bytes of a book file, of a book in a store, or of standard input, piece by piece. */
function bookBytes(
  path: string,
  given: Arguments,
  outlet: Outlet,
): Iterable<Uint8Array> | AsyncIterable<Uint8Array> {
  if (path === '-') return outlet.input;
  if (!isStoreStart(firstBytes(path))) return fileBytes(path, outlet);
  return readStoreBook(path, { group: given.get('group'), season: given.get('season') });
}

async function* inOrder(pieces: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* pieces;
}

export function sourceName(path: string): string {
  return path === '-' ? 'standard input' : path;
}

function andMore(count: number): string {
  return count > 0 ? ` (and ${count} more; check lists them)` : '';
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

function sizeOf(path: string): number {
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
