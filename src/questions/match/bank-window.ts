import { type BankEntry, dayNumber } from './bank-entries.ts';

/** A line of the bank's statement, as far as matching looks at it. */
export interface LineToMatch {
  readonly line: number;
  readonly date: string;
  /** Minor units; positive came in. */
  readonly cents: number;
  readonly text: string;
  /** The bank's own name for the line. */
  readonly reference?: string | undefined;
}

/** The bank books at most so many days before or after the day a person wrote (common practice). */
export const DAYS_BEFORE = 3;
export const DAYS_AFTER = 10;

/** Days from the record's day to the bank's; negative where the bank is earlier. */
export function daysApart(line: LineToMatch, entry: BankEntry): number {
  return dayNumber(line.date) - dayNumber(entry.date);
}

export function isNear(line: LineToMatch, entry: BankEntry): boolean {
  const days = daysApart(line, entry);
  return days >= -DAYS_BEFORE && days <= DAYS_AFTER;
}
