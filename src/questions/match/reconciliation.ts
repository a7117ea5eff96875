import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { bankEntries } from './bank-entries.ts';
import type { BankMatch } from './match-bank.ts';

/** An amount that brings a balance to what both should be (minor units, with sign). */
interface Adjustment {
  /** The bank's line, or the record, or both where they differ. */
  readonly line: number | undefined;
  readonly record: string | undefined;
  readonly cents: number;
}

/** A bank reconciliation: each balance, what is added to it, and what both should come to. */
export interface Reconciliation {
  readonly bookBalance: number;
  /** What the book lacks or has wrong. */
  readonly toBook: readonly Adjustment[];
  readonly adjustedBook: number;
  readonly bankBalance: number;
  /** What has not reached the bank yet, and the bank's own errors. */
  readonly toBank: readonly Adjustment[];
  readonly adjustedBank: number;
  /** Zero where everything is explained. */
  readonly difference: number;
}

/**
 * Brings the book's and the bank's balance to the same amount, from both sides: lines that only the
 * bank has and records that it shows otherwise go to the book; records that it does not show yet,
 * and lines that are its own errors, go to the bank.
 *
 * @param bankErrors lines that the bank has to take back; without it, those that are marked
 */
export function reconciliation(
  ledger: Ledger,
  match: BankMatch,
  lines: readonly { readonly line: number; readonly cents: number }[],
  bankErrors: ReadonlySet<number> = new Set(match.bankErrors),
): Reconciliation {
  const differing = new Map(match.differ.map((each) => [each.line, each]));
  const repeated = new Set(match.repeated);
  const open = lines.filter(
    ({ line }) =>
      (bankErrors.has(line) || match.unmatchedLines.includes(line)) && !repeated.has(line),
  );
  const toBook = open
    .filter(({ line }) => !bankErrors.has(line))
    .map(({ line, cents }) => {
      const near = differing.get(line);
      return { line, record: near?.record, cents: cents - (near?.ours ?? 0) };
    });
  const errors = open
    .filter(({ line }) => bankErrors.has(line))
    .map(({ line, cents }) => ({ line, record: undefined, cents: -cents }));
  const inTransit = outstandingEntries(ledger, match).map(({ record, cents }) => ({
    line: undefined,
    record,
    cents,
  }));
  const toBank = [...inTransit, ...errors];
  const adjustedBook = match.bookBalance + sum(toBook.map(({ cents }) => cents));
  const adjustedBank = match.bankBalance + sum(toBank.map(({ cents }) => cents));
  const { bookBalance, bankBalance } = match;
  const difference = adjustedBook - adjustedBank;
  return { bookBalance, toBook, adjustedBook, bankBalance, toBank, adjustedBank, difference };
}

/** Entries of unmatched records that the bank does not show in another form either. */
function outstandingEntries(ledger: Ledger, match: BankMatch) {
  const open = new Set(match.unmatchedRecords);
  for (const { record } of match.differ) open.delete(record);
  return bankEntries(ledger).filter(({ record }) => open.has(record));
}
