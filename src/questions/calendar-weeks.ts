import { addDays, daysBetween } from '../base/day.ts';
import { byText } from '../base/order.ts';

/** A calendar week, Monday to Sunday (ISO 8601-1), both days `YYYY-MM-DD`. */
export interface CalendarWeek {
  readonly from: string;
  readonly to: string;
}

const A_MONDAY = '1970-01-05';
/** Days are written with four digits for the year: no week reaches beyond them. */
const FIRST_DAY = '0000-01-01';
const LAST_DAY = '9999-12-31';
const DAYS = 7;
/** A mistyped year must not draw a thousand empty weeks: a longer gap is left out. */
const EMPTY_WEEKS_MOST = 6;

/** The week that holds a day. */
export function weekOf(day: string): CalendarWeek {
  const since = ((daysBetween(A_MONDAY, day) % DAYS) + DAYS) % DAYS;
  const back = Math.min(since, daysBetween(FIRST_DAY, day));
  const ahead = Math.min(DAYS - 1 - since, daysBetween(day, LAST_DAY));
  return { from: addDays(day, -back), to: addDays(day, ahead) };
}

/** The weeks that hold some days, in order, with the empty ones between where they are few. */
export function weeksHolding(days: Iterable<string>): CalendarWeek[] {
  const mondays = [...new Set([...days].map((day) => weekOf(day).from))].sort(byText);
  const weeks: CalendarWeek[] = [];
  for (const monday of mondays) {
    const last = weeks.at(-1)?.from;
    const apart = last === undefined ? 1 : Math.ceil(daysBetween(last, monday) / DAYS);
    const filled = last !== undefined && apart - 1 <= EMPTY_WEEKS_MOST ? apart : 1;
    for (let back = filled - 1; back >= 0; back -= 1) {
      weeks.push(weekOf(addDays(monday, -back * DAYS)));
    }
  }
  return weeks;
}

/** Things by the week of their day, under the week's first day. */
export function byWeek<T>(things: readonly T[], dayOf: (thing: T) => string): Map<string, T[]> {
  return Map.groupBy(things, (thing) => weekOf(dayOf(thing)).from);
}
