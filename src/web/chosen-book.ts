import type { BookAddress } from './connection.ts';

/**
 * Which book this window shows: kept for the window, and for new windows the last one chosen.
 * Only ids are kept in the browser, never records.
 */
const KEY = 'cratebook.book';

export function chooseBook({ group, season }: BookAddress): void {
  const text = JSON.stringify([group, season]);
  sessionStorage.setItem(KEY, text);
  localStorage.setItem(KEY, text);
}

/** The book chosen earlier where it is still here, or the only one; undefined asks the person. */
export function chosenBook(books: readonly BookAddress[]): BookAddress | undefined {
  const kept = keptChoice();
  const same = books.find((book) => JSON.stringify([book.group, book.season]) === kept);
  return same ?? (books.length === 1 ? books[0] : undefined);
}

/** True where a book was opened on this device before. */
export function wasBookChosen(): boolean {
  return keptChoice() !== null;
}

function keptChoice(): string | null {
  return sessionStorage.getItem(KEY) ?? localStorage.getItem(KEY);
}
