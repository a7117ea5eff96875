import type { MovementRecord } from '../../records/record.ts';
import { largestAmount } from '../largest-amount.ts';
import { movedBy } from '../moved-by.ts';
import { about, type BookCheck, type CheckedBook } from './checked-book.ts';

const WANTED = 'amounts that can be added up exactly: 9007199254740991 in all at most';

/** No sum leaves the whole numbers that are exact; else no balance of the book could be trusted. */
export const sumsAreExact: BookCheck = (book, findings) => {
  if (book.ledger.balances.exact) return;
  const largest = largestMovement(book);
  if (largest === undefined) return;
  const [field, amount] = largestAmount(largest);
  findings.add(about(book, largest, 'error', field, amount, WANTED));
};

function largestMovement(book: CheckedBook): MovementRecord | undefined {
  let largest: MovementRecord | undefined;
  let most = -1;
  for (const movement of book.ledger.movements()) {
    const moved = movedBy(book.ledger, movement);
    if (moved > most) {
      most = moved;
      largest = movement;
    }
  }
  return largest;
}
