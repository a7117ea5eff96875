import { FindingList } from '../intake/finding-list.ts';
import { balancesMakeSense } from './book-checks/balances-make-sense.ts';
import { bankedOnce } from './book-checks/banked-once.ts';
import type { BookCheck, CheckedBook } from './book-checks/checked-book.ts';
import { claimsFit } from './book-checks/claims-fit.ts';
import { namedThingsExist } from './book-checks/named-things-exist.ts';
import { recordsAgree } from './book-checks/records-agree.ts';
import { conflictsAreSettled, seasonsFit } from './book-checks/seasons-fit.ts';
import { sumsAreExact } from './book-checks/sums-are-exact.ts';

/**
 * What only shows when a book is seen as a whole, after each of its lines was readable. Errors
 * refuse the book: it says something about things that are not in it. Warnings are told by `check`.
 */
const refusing: readonly BookCheck[] = Object.freeze([claimsFit, namedThingsExist, sumsAreExact]);

const telling: readonly BookCheck[] = Object.freeze([
  seasonsFit,
  recordsAgree,
  bankedOnce,
  balancesMakeSense,
  conflictsAreSettled,
]);

/** Only what refuses a book: quick enough to run before every answer from a file. */
export function refusingFindings(book: CheckedBook): FindingList {
  const findings = new FindingList();
  for (const check of refusing) check(book, findings);
  return findings;
}

/** Everything there is to say about a book. */
export function checkBook(book: CheckedBook): FindingList {
  const findings = refusingFindings(book);
  // Balances that are not exact would only raise false alarms.
  if (findings.hasErrors) return findings;
  for (const check of telling) check(book, findings);
  return findings;
}
