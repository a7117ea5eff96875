import type { Mover } from '../../ledger/posting.ts';
import type { BookRecord, MovementRecord } from '../../records/record.ts';
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
    const moved = movedBy(book, movement);
    if (moved > most) {
      most = moved;
      largest = movement;
    }
  }
  return largest;
}

function movedBy(book: CheckedBook, movement: MovementRecord): number {
  let moved = 0;
  const meter: Mover = {
    stock: (_product, units) => {
      moved += Math.abs(units);
    },
    money: (minor) => {
      moved += Math.abs(minor);
    },
    credit: (_product, units) => {
      moved += Math.abs(units);
    },
  };
  book.ledger.postingsTo(movement, meter);
  return moved;
}

/** The largest number that a record itself says, with its path. */
function largestAmount(record: BookRecord): [field: string, amount: number] {
  let found: [string, number] = ['', 0];
  const look = (value: unknown, path: string) => {
    if (typeof value === 'number' && value > found[1]) found = [path, value];
    if (typeof value !== 'object' || value === null) return;
    for (const [key, part] of Object.entries(value))
      look(part, path === '' ? key : `${path}.${key}`);
  };
  look(record, '');
  return found;
}
