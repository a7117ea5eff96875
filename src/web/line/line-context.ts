import type { LineContext } from '../../intake/one-line/read-line.ts';
import { lineNames } from '../../questions/line-names.ts';
import type { Book } from '../book.ts';

/** What the reader of one line asks of a book, answered by the open one. */
export function lineContext(book: Book): LineContext {
  return {
    ...lineNames(book.ledger),
    today: book.workingDay(),
    currency: book.currency,
    receipt: book.nextReceipt(),
  };
}
