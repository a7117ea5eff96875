/**
 * Calendar days as text (`YYYY-MM-DD`, proleptic Gregorian, ISO 8601-1). A day is never turned
 * into an instant, so no time zone or clock can move it.
 */

/** A day that exists: month lengths and leap years are in the pattern itself. */
export const DAY_PATTERN =
  '(?:\\d{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\\d|3[01])' +
  '|(?:0[469]|11)-(?:0[1-9]|[12]\\d|30)' +
  '|02-(?:0[1-9]|1\\d|2[0-8]))' +
  '|(?:\\d\\d(?:0[48]|[2468][048]|[13579][26])|(?:[02468][048]|[13579][26])00)-02-29)';

export const CLOCK_PATTERN = '(?:[01]\\d|2[0-3]):[0-5]\\d';

const DAY = new RegExp(`^${DAY_PATTERN}$`);
const DAY_MS = 86_400_000;

export function isDay(text: string): boolean {
  return DAY.test(text);
}

/** The day `days` after (or, negative, before) the given one. */
export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from the first day to the second; negative when the second is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);
}
