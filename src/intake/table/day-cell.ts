import { isDay } from '../../base/day.ts';

/** Which part of a day stands first in a file. */
export type DayOrder = (typeof dayOrders)[number];

export const dayOrders = ['year-month-day', 'month-day-year', 'day-month-year'] as const;

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** A cell as a day (`YYYY-MM-DD`), also `2027-02-15T09:00` and `15 Feb 27`; else undefined. */
export function dayOf(text: string, order: DayOrder): string | undefined {
  const parts =
    text
      .trim()
      .split(/[T ]\d{1,2}:/)[0]
      ?.split(/[^\p{L}\d]+/u) ?? [];
  const named = parts.findIndex((part) => MONTHS.includes(monthStart(part)));
  const numbers = parts.map((part, at) =>
    at === named ? MONTHS.indexOf(monthStart(part)) + 1 : Number(part),
  );
  const [whole = ''] = parts;
  if (parts.length === 1 && /^\d{8}$/.test(whole)) return packedDay(whole);
  const [a = Number.NaN, b = Number.NaN, c = Number.NaN] = numbers;
  const isYearFirst = order === 'year-month-day' || a > 31;
  const isMonthFirst = named === 0 || (named === -1 && order === 'month-day-year');
  const [year, month, day] = isYearFirst ? [a, b, c] : isMonthFirst ? [c, a, b] : [c, b, a];
  if (![year, month, day].every(Number.isInteger)) return undefined;
  const full = year < 100 ? 2000 + year : year;
  const found = `${padded(full, 4)}-${padded(month, 2)}-${padded(day, 2)}`;
  return isDay(found) ? found : undefined;
}

/**
 * The order of the days of a column: the only one in which most cells are days and, where several
 * are left, the only one in which the days run one way. Undefined where it stays open: then a
 * person is asked, since 03/04 must not be guessed at.
 */
export function dayOrderOf(cells: readonly string[]): DayOrder | undefined {
  const written = cells.filter((cell) => cell !== '');
  const counts = dayOrders.map((order) => written.filter((cell) => dayOf(cell, order)).length);
  const most = Math.max(...counts);
  const fits = dayOrders.filter((_, at) => most > 0 && counts[at] === most);
  const days = fits.map((order) => written.flatMap((cell) => dayOf(cell, order) ?? []));
  if (new Set(days.map((each) => each.join())).size <= 1) return fits[0];
  // With points between, days come first wherever they are written so (common practice).
  if (written.every((cell) => cell.includes('.')) && fits.includes('day-month-year')) {
    return 'day-month-year';
  }
  const running = fits.filter((_, at) => runsOneWay(days[at] ?? []));
  return running.length === 1 ? running[0] : undefined;
}

function runsOneWay(days: readonly string[]): boolean {
  const isUp = days.every((day, at) => at === 0 || (days[at - 1] ?? '') <= day);
  return isUp || days.every((day, at) => at === 0 || (days[at - 1] ?? '') >= day);
}

function monthStart(part: string): string {
  return part.slice(0, 3).toLowerCase();
}

function packedDay(text: string): string | undefined {
  const found = `${text.slice(0, 4)}-${text.slice(4, 6)}-${text.slice(6)}`;
  return isDay(found) ? found : undefined;
}

function padded(part: number, length: number): string {
  return String(part).padStart(length, '0');
}
