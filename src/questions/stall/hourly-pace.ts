import { secondsBetween } from '../../base/local-time.ts';
import { sum } from '../../base/sum.ts';
import type { StallEntry } from '../../records/stall-entry.ts';
import type { StallSheet } from './stall-sheet.ts';

export interface HourSold {
  /** Local hour, `YYYY-MM-DDTHH`. */
  readonly hour: string;
  readonly units: number;
}

export interface HourlyPace {
  /** Every hour from the first sale to the last, also those without one. */
  readonly hours: readonly HourSold[];
  /** Whole minutes from the opening (or the first sale) to the moment asked about. */
  readonly minutes: number;
  /** Units an hour, rounded half up; undefined while there is too little to say. */
  readonly anHour: number | undefined;
}

/** Before so many minutes an hourly figure would be made of one or two buyers. */
const MINUTES_MIN = 30;
/** Hours on one sheet: a phone whose clock jumped must not make a table without end. */
const HOURS_MAX = 48;

/** How quickly a stall sells, by what was tapped. @param now local time, with seconds */
export function hourlyPace(sheet: StallSheet, now: string): HourlyPace {
  const sales = sheet.entries.filter(({ what }) => what === 'sold');
  const since = sheet.opening.entries[0]?.at ?? sales[0]?.at;
  const last = sales.at(-1)?.at ?? '';
  const until = now > last ? now : last;
  const seconds = since === undefined ? 0 : Math.max(0, secondsBetween(since, until));
  const minutes = Math.floor(seconds / 60);
  return {
    hours: hoursOf(sales),
    minutes,
    anHour:
      minutes < MINUTES_MIN
        ? undefined
        : Math.floor((sheet.soldUnits * 120 + minutes) / (2 * minutes)),
  };
}

function hoursOf(sales: readonly StallEntry[]): HourSold[] {
  const byHour = new Map<string, number>();
  for (const { at, lines = {} } of sales) {
    const units = sum(Object.values(lines));
    byHour.set(at.slice(0, 13), (byHour.get(at.slice(0, 13)) ?? 0) + units);
  }
  const [first, last] = [sales[0]?.at.slice(0, 13), sales.at(-1)?.at.slice(0, 13)];
  if (first === undefined || last === undefined) return [];
  const apart = secondsBetween(`${first}:00`, `${last}:00`) / 3600;
  if (apart > HOURS_MAX) return [...byHour].map(([hour, units]) => ({ hour, units }));
  const start = Date.parse(`${first}:00Z`);
  return Array.from({ length: apart + 1 }, (_, place) => {
    const hour = new Date(start + place * 3_600_000).toISOString().slice(0, 13);
    return { hour, units: byHour.get(hour) ?? 0 };
  });
}
