import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Finding } from '../intake/finding.ts';
import type { BookRead } from '../intake/read-book.ts';
import { Ledger } from '../ledger/ledger.ts';
import type { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';
import { refusingFindings } from './check-book.ts';

/** A book file without any error, folded. */
export interface AcceptedBook {
  readonly header: Header;
  readonly records: readonly BookRecord[];
  readonly ledger: Ledger;
}

/**
 * A file that was read is taken whole, or refused whole with every error that was found in it.
 * @param already records that are in the book that the file is added to: the file may name what
 * they set up. Where one has an id of the file, the store compares the two.
 */
export function acceptBook(
  read: BookRead,
  already: readonly BookRecord[] = [],
): Outcome<AcceptedBook, readonly Finding[]> {
  const unreadable = read.findings.filter(isError);
  if (read.header === undefined || unreadable.length > 0) return refused(unreadable);
  const ledger =
    already.length === 0
      ? Ledger.ofDistinct(read.records, read.places)
      : Ledger.of([...already, ...read.records]);
  const { records, lines } = read;
  const errors = refusingFindings({ ledger, records, lines }).inOrder().filter(isError);
  if (errors.length > 0) return refused(errors);
  return done({ header: read.header, records, ledger });
}

function isError(finding: Finding): boolean {
  return finding.severity === 'error';
}
