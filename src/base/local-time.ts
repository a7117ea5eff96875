/**
 * Local times as text (`YYYY-MM-DDTHH:MM`, or with seconds), of the place where a stall stands.
 * They are never turned into an instant, so a change of the clocks between two is not known.
 */

/** Seconds from one local time to another; negative when the second is earlier. */
export function secondsBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 1000);
}

/** A time of day put on the day of a local time; a time with a day of its own stays. */
export function onDayOf(local: string, time: string): string {
  return time.includes('T') ? time : `${local.slice(0, 10)}T${time}`;
}
