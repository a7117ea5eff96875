import type { Say } from '../words/say.ts';

/**
 * When a stall is open, in local time: `6 Mar 2027, 09:00 to 12:00`. @param starts
 * `YYYY-MM-DDTHH:MM`
 */
export function stallTimeText(starts: string, ends: string, say: Say): string {
  const [day = '', from = ''] = starts.split('T');
  const [lastDay = '', to = ''] = ends.split('T');
  if (lastDay === day) return say`${say.day(day)}, ${from} to ${to}`;
  return say`${say.day(day)}, ${from} to ${say.day(lastDay)}, ${to}`;
}

/** The clock part of a shift's `YYYY-MM-DDTHH:MM` or `HH:MM`. */
export function clockText(time: string): string {
  return time.slice(time.indexOf('T') + 1);
}
