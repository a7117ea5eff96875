import { onDayOf, secondsBetween } from '../../base/local-time.ts';
import type { RecordOf } from '../../records/record.ts';

/**
 * Minutes that each seller was down for at a stall, all shifts together. A shift that says only a
 * time of day is on the stall's own day; one that ends before it starts counts as 0 minutes.
 */
export function minutesWorked(stall: RecordOf<'stall'>): ReadonlyMap<string, number> {
  const minutes = new Map<string, number>();
  for (const { seller, from, to } of stall.shifts) {
    const seconds = secondsBetween(onDayOf(stall.starts, from), onDayOf(stall.starts, to));
    const worked = Math.max(0, seconds / 60);
    minutes.set(seller, (minutes.get(seller) ?? 0) + worked);
  }
  return minutes;
}
