import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecordOf } from '../../records/record.ts';
import { type ShiftCover, shiftCover } from './shift-cover.ts';

type Shift = RecordOf<'stall'>['shifts'][number];

function stall(shifts: readonly Shift[], starts = '09:00', ends = '12:00'): RecordOf<'stall'> {
  return {
    id: '',
    at: '',
    by: '',
    kind: 'stall',
    stall: 'quay',
    host: 'market',
    starts: `2027-04-03T${starts}`,
    ends: `2027-04-03T${ends}`,
    shifts: [...shifts],
  };
}

const shift = (seller: string, from: string, to: string): Shift => ({ seller, from, to });
const gap = (from: string, to: string) => ({ from: `2027-04-03T${from}`, to: `2027-04-03T${to}` });

describe('whether shifts cover a stall', () => {
  it('names the gaps, as looked up by hand', () => {
    expect(
      shiftCover(stall([shift('ada', '09:00', '10:30'), shift('ben', '11:00', '13:00')])),
    ).toEqual({ sellers: 2, gaps: [gap('10:30', '11:00')], fewest: 0, most: 1 });
    expect(shiftCover(stall([])).gaps).toEqual([gap('09:00', '12:00')]);
  });

  it('has no gap between shifts that meet, and counts a seller once', () => {
    const meeting = [shift('ada', '08:30', '10:00'), shift('ada', '10:00', '12:00')];
    expect(shiftCover(stall(meeting))).toEqual({ sellers: 1, gaps: [], fewest: 1, most: 1 });
    expect(shiftCover(stall([...meeting, shift('ada', '09:00', '12:00')])).most).toBe(1);
  });

  it('takes a shift that ends before it starts, or lies outside, for none', () => {
    const none = [shift('ada', '11:00', '10:00'), shift('ben', '07:00', '08:00')];
    expect(shiftCover(stall(none))).toMatchObject({ sellers: 0, gaps: [gap('09:00', '12:00')] });
  });

  it('says of every minute what a look at that minute alone says', () => {
    fc.assert(fc.property(anyShifts, (shifts) => agrees(shifts, shiftCover(stall(shifts)))));
    const looksAtTheLastEnd = (shifts: readonly Shift[]): ShiftCover => {
      const sorted = [...shifts].sort((a, b) => (a.from < b.from ? -1 : 1));
      const gaps = sorted.slice(1).flatMap((next, at) => {
        const before = sorted[at]?.to ?? '';
        return before < next.from ? [gap(before, next.from)] : [];
      });
      return { ...shiftCover(stall(shifts)), gaps };
    };
    const isCaught = fc.check(
      fc.property(anyShifts, (shifts) => agrees(shifts, looksAtTheLastEnd(shifts))),
    );
    expect(isCaught.failed).toBe(true);
  });
});

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const anyShifts = fc.array(
  fc
    .tuple(fc.constantFrom('ada', 'ben', 'cai'), fc.nat(300), fc.nat(120))
    .map(([seller, from, long]) => shift(seller, clock(480 + from), clock(480 + from + long))),
  { maxLength: 6 },
);

function agrees(shifts: readonly Shift[], { gaps, fewest, most }: ShiftCover): boolean {
  const there: number[] = [];
  for (let minute = 540; minute < 720; minute += 1) {
    const now = clock(minute);
    const working = shifts.filter(({ from, to }) => from <= now && now < to);
    const sellers = new Set(working.map(({ seller }) => seller)).size;
    there.push(sellers);
    const inGap = gaps.some(({ from, to }) => from.slice(11) <= now && now < to.slice(11));
    if (inGap !== (sellers === 0)) return false;
  }
  return fewest === Math.min(...there) && most === Math.max(...there);
}
