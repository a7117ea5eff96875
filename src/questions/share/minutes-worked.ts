import { daysBetween } from '../../base/day.ts';
import type { RecordOf } from '../../records/record.ts';

/**
 * Minutes that each seller was down for at a stall, all shifts together. A shift that says only a
 * time of day is on the stall's own day; one that ends before it starts counts as 0 minutes.
 */
export function minutesWorked(stall: RecordOf<'stall'>): ReadonlyMap<string, number> {
  const minutes = new Map<string, number>();
  for (const { seller, from, to } of stall.shifts) {
    const worked = Math.max(0, minuteOf(stall, to) - minuteOf(stall, from));
    minutes.set(seller, (minutes.get(seller) ?? 0) + worked);
  }
  return minutes;
}

/** Minutes from the start of the stall's first day. */
function minuteOf(stall: RecordOf<'stall'>, time: string): number {
  const firstDay = stall.starts.slice(0, 10);
  const day = time.length > 5 ? time.slice(0, 10) : firstDay;
  const [hours = 0, minutes = 0] = time.slice(-5).split(':').map(Number);
  return daysBetween(firstDay, day) * 1440 + hours * 60 + minutes;
}
