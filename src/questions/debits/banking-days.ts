import { addDays, daysBetween } from '../../base/day.ts';

/** What banks do, as data: days on which they book, and how long money is not yet safe. */
export interface BankingRules {
  /** Days on which no bank books, beside Saturdays and Sundays (`YYYY-MM-DD`). */
  readonly holidays: ReadonlySet<string>;
  /** Banking days after which cash brought to the bank is there. */
  readonly cashDays: number;
  /** Banking days after which a deposited cheque will hardly come back. */
  readonly chequeDays: number;
  /** Banking days after which a card payout on the book is at the bank. */
  readonly cardDays: number;
}

/**
 * Common practice, from no single source; banks differ, so a group may write its own bank's days
 * into its season.
 */
export const commonBankingDays = { cashDays: 1, chequeDays: 5, cardDays: 2 } as const;

/**
 * Holidays of the banks of the United States, 2026 to 2028 (the Federal Reserve's eleven holidays,
 * by their rules, from memory; one that falls on a Saturday is not moved). Check with your bank.
 */
export const usBankHolidays: readonly string[] = [
  ...['2026-01-01', '2026-01-19', '2026-02-16', '2026-05-25', '2026-06-19', '2026-09-07'],
  ...['2026-10-12', '2026-11-11', '2026-11-26', '2026-12-25'],
  ...['2027-01-01', '2027-01-18', '2027-02-15', '2027-05-31', '2027-07-05', '2027-09-06'],
  ...['2027-10-11', '2027-11-11', '2027-11-25'],
  ...['2028-01-17', '2028-02-21', '2028-05-29', '2028-06-19', '2028-07-04', '2028-09-04'],
  ...['2028-10-09', '2028-11-23', '2028-12-25'],
];

/** 1 January 2000 was a Saturday. */
const A_SATURDAY = '2000-01-01';

export function isBankingDay(day: string, { holidays }: BankingRules): boolean {
  const sinceSaturday = ((daysBetween(A_SATURDAY, day) % 7) + 7) % 7;
  return sinceSaturday > 1 && !holidays.has(day);
}

/** The banking day so many before a day (1: the last one before it); the day itself is not one. */
export function bankingDaysBefore(day: string, count: number, rules: BankingRules): string {
  let at = day;
  for (let left = count; left > 0; ) {
    at = addDays(at, -1);
    if (isBankingDay(at, rules)) left -= 1;
  }
  return at;
}

/** The banking day on which an order for a day is carried out: it, or the next one. */
export function bankingDayFrom(day: string, rules: BankingRules): string {
  let at = day;
  while (!isBankingDay(at, rules)) at = addDays(at, 1);
  return at;
}
