import type { Ledger } from '../ledger/ledger.ts';

/**
 * The day that a new record most likely happened on, offered in a form and free to be changed:
 * today; before the season's first day (a season set up ahead, or the made-up one) the day of the
 * last thing recorded; after closing no day before it.
 *
 * @param today `YYYY-MM-DD`
 */
export function workingDay(ledger: Ledger, today: string): string {
  const { season } = ledger.setup;
  if (season === undefined) return today;
  const closed = season.closed?.date ?? '';
  const day = today < season.starts ? (ledger.movements().at(-1)?.date ?? season.starts) : today;
  return day < closed ? closed : day;
}
