import { findingLine } from '../../intake/finding.ts';
import { type BookRead, BookReader } from '../../intake/read-book.ts';
import { type AcceptedBook, acceptBook } from '../../rules/accept-book.ts';
import { bookBytes, sourceName } from './book-bytes.ts';
import type { Outlet } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';

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

function andMore(count: number): string {
  return count > 0 ? ` (and ${count} more; check lists them)` : '';
}
