import { JoinedParts } from '../intake/quick/joined-parts.ts';
import type { PartFacts } from '../intake/quick/part-facts.ts';
import type { QuickRecords } from '../intake/quick/quick-records.ts';
import { quickClaims } from './quick-claims.ts';
import { sumPart } from './quick-part.ts';
import { type BalancedBook, QuickSums } from './quick-sums.ts';

/**
 * Balances of a book that was read quickly, by the ledger's own rules: the same claims, prices and
 * postings, record by record, without a list of records.
 *
 * @param day balances at the end of this day; without it, after all that is recorded
 * @returns undefined where the book is not surely one that nothing refuses: it is then to be read
 * and checked the slow way, which says what is wrong
 */
export function quickBook(records: QuickRecords, day?: string): BalancedBook | undefined {
  const sums = joinParts(records, [], day);
  const [plan] = sums?.plans ?? [];
  const own = plan === undefined ? undefined : sumPart(records, plan);
  return own === undefined ? undefined : sums?.balanced(own, []);
}

/**
 * Sees the parts of a book as one, so that each can be added up. The parts are whole lines of one
 * file, each line in one part, the header in the first.
 *
 * @param own the first part
 * @param others what the other parts say, wherever they were read
 * @returns undefined as `quickBook` does
 */
export function joinParts(
  own: QuickRecords,
  others: readonly PartFacts[],
  day?: string,
): QuickSums | undefined {
  const parts = JoinedParts.of([own.facts(), ...others]);
  const counting = parts === undefined ? undefined : quickClaims(parts);
  return parts === undefined || counting === undefined
    ? undefined
    : QuickSums.of(parts, counting, day);
}
