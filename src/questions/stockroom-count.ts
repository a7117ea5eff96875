import type { Ledger } from '../ledger/ledger.ts';
import { byHappened, type RecordOf } from '../records/record.ts';

/** The last stockroom count that stands: by day, then by when it was written. */
export function latestCount(ledger: Ledger): RecordOf<'count'> | undefined {
  return ledger
    .movements()
    .filter((record) => record.kind === 'count')
    .sort(byHappened)
    .at(-1);
}

/**
 * Counted units less the book's at the end of the count's day, product by product, agreeing
 * products left out. Positive is over, negative is short. A product the count does not name is 0.
 */
export function stockroomDifference(
  ledger: Ledger,
  count: RecordOf<'count'>,
): Record<string, number> {
  const book = ledger.asOf(count.date).linesOf('stock', 'stockroom');
  const products = new Set([...Object.keys(book), ...Object.keys(count.lines)]);
  const difference: Record<string, number> = {};
  for (const product of [...products].sort()) {
    const off = (count.lines[product] ?? 0) - (book[product] ?? 0);
    if (off !== 0) difference[product] = off;
  }
  return difference;
}
