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

/** The movement that says the largest number, or that moves most where all say small ones. */
function largestMovement(book: CheckedBook): MovementRecord | undefined {
  let largest: MovementRecord | undefined;
  let most = -1;
  for (const movement of book.ledger.movements()) {
    const said = largestAmount(movement)[1];
    const size = said > LARGE ? said : movedBy(book.ledger, movement) / Number.MAX_SAFE_INTEGER;
    if (size > most) {
      most = size;
      largest = movement;
    }
  }
  return largest;
}

/** No unit count or amount of a real season comes near it. */
const LARGE = 1e12;
