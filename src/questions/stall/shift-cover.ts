import { onDayOf } from '../../base/local-time.ts';
import type { RecordOf } from '../../records/record.ts';

interface Gap {
  /** Local time, `YYYY-MM-DDTHH:MM`. */
  readonly from: string;
  readonly to: string;
}

export interface ShiftCover {
  /** Sellers with a shift within the stall's hours. */
  readonly sellers: number;
  /** Stretches of the stall's hours in which nobody is down, in order. */
  readonly gaps: readonly Gap[];
  /** The fewest and the most sellers that are down at one time while the stall is open. */
  readonly fewest: number;
  readonly most: number;
}

/**
 * Whether sellers' shifts cover the hours of a stall. A shift that ends as another begins leaves no
 * gap; one that ends before it starts counts as none; what lies outside the stall's hours is left
 * out. A time of day is on the stall's own day.
 */
export function shiftCover(stall: RecordOf<'stall'>): ShiftCover {
  const { starts, ends } = stall;
  const shifts = stall.shifts.flatMap(({ seller, from, to }) => {
    const [begin, end] = [later(onDayOf(starts, from), starts), earlier(onDayOf(starts, to), ends)];
    return begin < end ? [{ seller, begin, end }] : [];
  });
  const edges = new Set([starts, ends, ...shifts.flatMap(({ begin, end }) => [begin, end])]);
  const times = [...edges].filter((time) => time >= starts && time <= ends).sort();
  const gaps: Gap[] = [];
  const working: number[] = [];
  for (const [place, from] of times.entries()) {
    const to = times[place + 1];
    if (to === undefined) break;
    const there = shifts.filter(({ begin, end }) => begin <= from && to <= end);
    working.push(new Set(there.map(({ seller }) => seller)).size);
    if (there.length > 0) continue;
    const before = gaps.at(-1);
    if (before?.to === from) gaps[gaps.length - 1] = { from: before.from, to };
    else gaps.push({ from, to });
  }
  return {
    sellers: new Set(shifts.map(({ seller }) => seller)).size,
    gaps,
    fewest: working.length === 0 ? 0 : Math.min(...working),
    most: Math.max(0, ...working),
  };
}

/** Local times compare as text. */
function later(one: string, other: string): string {
  return one > other ? one : other;
}

function earlier(one: string, other: string): string {
  return one < other ? one : other;
}
