import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hourlyPace } from './hourly-pace.ts';
import { stallSheet } from './stall-sheet.ts';
import { anyPhone, pen } from './test-entries.ts';

describe('how quickly a stall sells', () => {
  it('is by the hour, with the hours without a sale, as counted by hand', () => {
    const on = pen('K7M', '2027-04-03T08:59:59');
    const lines = [on.write('open', { lines: { honey: 24 } })];
    for (let sale = 0; sale < 5; sale += 1) lines.push(on.write('sold', { lines: { honey: 1 } }));
    on.wait(2 * 3600);
    lines.push(on.write('sold', { lines: { honey: 2 } }));
    const pace = hourlyPace(stallSheet(lines), '2027-04-03T11:30:00');
    expect(pace.hours).toEqual([
      { hour: '2027-04-03T09', units: 5 },
      { hour: '2027-04-03T10', units: 0 },
      { hour: '2027-04-03T11', units: 2 },
    ]);
    // 7 units in 150 minutes are 2.8 an hour.
    expect([pace.minutes, pace.anHour]).toEqual([150, 3]);
  });

  it('says nothing before half an hour, nor without a sale', () => {
    const on = pen('K7M', '2027-04-03T09:00:00');
    const sheet = stallSheet([on.write('sold', { lines: { honey: 1 } })]);
    expect(hourlyPace(sheet, '2027-04-03T09:30:00').anHour).toBe(undefined);
    expect(hourlyPace(sheet, '2027-04-03T09:30:01').anHour).toBe(2);
    const none = { hours: [], minutes: 0, anHour: undefined };
    expect(hourlyPace(stallSheet([]), '2027-04-03T09:30:00')).toEqual(none);
  });

  it('keeps a short table where a clock jumped by a year', () => {
    const [on, off] = [pen('K7M'), pen('P3D', '2099-01-01T00:00:00')];
    const sold = { lines: { honey: 1 } };
    const sheet = stallSheet([on.write('sold', sold), off.write('sold', sold)]);
    expect(hourlyPace(sheet, '2027-04-03T10:00:00').hours).toHaveLength(2);
  });

  it('has every unit in one hour', () => {
    const addsUp = (lines: Parameters<typeof stallSheet>[0], left = 0): boolean => {
      const sheet = stallSheet(lines);
      const { hours } = hourlyPace(sheet, '2027-04-03T18:00:00');
      return hours.slice(left).reduce((sum, { units }) => sum + units, 0) === sheet.soldUnits;
    };
    fc.assert(fc.property(anyPhone('K7M'), (lines) => addsUp(lines)));
    expect(fc.check(fc.property(anyPhone('K7M'), (lines) => addsUp(lines, 1))).failed).toBe(true);
  });
});
