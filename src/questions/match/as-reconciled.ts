import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { type BankEntry, bankEntries } from './bank-entries.ts';
import type { BankError } from './bank-errors.ts';

/** The bank account on a day, from what was accepted: no file is needed. */
export interface AsReconciled {
  readonly date: string;
  /** Minor units by the book at the end of the day. */
  readonly bookBalance: number;
  /** What the bank's accepted lines up to the day come to. */
  readonly bankBalance: number;
  /** In the book by the day, and at the bank later or not yet. */
  readonly notAtBank: readonly BankEntry[];
  /** At the bank by the day, and dated later in the book. */
  readonly notInBook: readonly BankEntry[];
  /** Lines up to the day that the bank itself got wrong, and those that took them back. */
  readonly bankErrors: readonly BankError[];
}

/**
 * The finished reconciliation of a day. `bookBalance` less what is not yet at the bank, plus what
 * the bank had before the book, plus its own errors, is `bankBalance`.
 */
export function asReconciled(ledger: Ledger, date: string): AsReconciled {
  const entries = bankEntries(ledger);
  const errors = ledger.setup.season?.bankErrors ?? [];
  const bankErrors = errors
    .filter((each) => each.date <= date)
    .toSorted((a, b) => byText(a.date, b.date));
  const isCleared = ({ cleared }: BankEntry) => cleared !== undefined && cleared.date <= date;
  return {
    date,
    bookBalance: ledger.asOf(date).moneyOf('bank'),
    bankBalance: sum([...entries.filter(isCleared), ...bankErrors].map(({ cents }) => cents)),
    notAtBank: entries.filter((entry) => entry.date <= date && !isCleared(entry)),
    notInBook: entries.filter((entry) => entry.date > date && isCleared(entry)),
    bankErrors,
  };
}

/**
 * The book as it was written up to an instant: what was added or edited later is left out, so that
 * a reconciliation can be printed again as it was on its day.
 *
 * @param instant RFC 3339 in UTC, as in the records' `at`
 */
export function bookAsWritten(ledger: Ledger, instant: string): Ledger {
  return Ledger.of([...ledger.standing.records()].filter(({ at }) => at <= instant));
}
