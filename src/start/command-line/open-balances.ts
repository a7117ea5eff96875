import { QuickReader } from '../../intake/quick/quick-reader.ts';
import { quickBook } from '../../rules/quick-book.ts';
import type { BalancedBook } from '../../rules/quick-sums.ts';
import { balancesInParts } from './balances-in-parts.ts';
import { bookBytes, sizeOf } from './book-bytes.ts';
import { setEngineForQuickReading } from './engine.ts';
import type { Outlet } from './outlet.ts';
import type { FileParts } from './part-threads.ts';
import type { Arguments } from './read-arguments.ts';

/**
 * Opens a book for its balances alone: the quick way, which is sure of nearly every book that
 * nothing refuses. Of any other the slow way says what is wrong.
 *
 * @param withNames true where the set-up is asked for too
 * @param parts of the book file, where several threads have begun to read it; they are ended
 * @param day balances at the end of this day; without it, after all that is recorded
 */
export async function openBalances(
  given: Arguments,
  outlet: Outlet,
  withNames: boolean,
  parts: FileParts | undefined,
  day: string | undefined,
): Promise<BalancedBook> {
  const [path = ''] = given.positionals;
  const kept: Uint8Array[] = [];
  const book =
    parts === undefined
      ? await balancesOfOne(given, outlet, withNames, kept, day)
      : await balancesInParts(parts, outlet, day);
  if (book !== undefined) return book;
  setEngineForQuickReading(false);
  const again = { ...outlet, input: path === '-' ? inOrder(kept) : outlet.input };
  const { openBook } = await import('./open-book.ts');
  const { ledger } = await openBook(given, again);
  const balances = day === undefined ? ledger.balances : ledger.asOf(day);
  return { balances, setup: ledger.setup };
}

/** @param kept takes in what comes from standard input, which cannot be read twice */
async function balancesOfOne(
  given: Arguments,
  outlet: Outlet,
  withNames: boolean,
  kept: Uint8Array[],
  day: string | undefined,
): Promise<BalancedBook | undefined> {
  const [path = ''] = given.positionals;
  const reader = new QuickReader(withNames, path === '-' ? 0 : sizeOf(path));
  for await (const bytes of bookBytes(path, given, outlet)) {
    if (path === '-') kept.push(bytes);
    await reader.push(bytes);
    if (path !== '-' && !reader.isSure) break;
  }
  const records = await reader.end();
  return records === undefined ? undefined : quickBook(records, day);
}

async function* inOrder(pieces: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* pieces;
}
