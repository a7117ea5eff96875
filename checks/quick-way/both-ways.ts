import { QuickReader } from '../../src/intake/quick/quick-reader.ts';
import { readBook } from '../../src/intake/read-book.ts';
import { acceptBook } from '../../src/rules/accept-book.ts';
import { type BalancedBook, quickBook } from '../../src/rules/quick-book.ts';

/** What a book is answered with, in plain data. */
export function answerOf(book: BalancedBook, day: string): unknown {
  return {
    balances: book.balances.toAccounts(),
    asOf: book.asOf(day).toAccounts(),
    season: book.setup.season,
    sellers: [...book.setup.sellers.values()],
    stalls: [...book.setup.stalls.values()],
  };
}

/** The slow way's answer, or that it refuses the book. */
export function slowAnswer(bytes: Uint8Array, day: string): unknown {
  const accepted = acceptBook(readBook([bytes]));
  return accepted.ok ? answerOf(accepted.value.ledger, day) : 'refused';
}

/** The quick way's answer, or that it is not sure. */
export function quickAnswer(pieces: readonly Uint8Array[], day: string): unknown {
  const reader = new QuickReader();
  for (const piece of pieces) reader.push(piece);
  const read = reader.end();
  const book = read === undefined ? undefined : quickBook(read);
  return book === undefined ? 'not sure' : answerOf(book, day);
}
