import { expect, it } from 'vitest';
import { byWeek, weekOf, weeksHolding } from './calendar-weeks.ts';

it.each([
  ['2027-02-01', '2027-02-01', '2027-02-07'],
  ['2027-02-07', '2027-02-01', '2027-02-07'],
  ['2027-01-01', '2026-12-28', '2027-01-03'],
  ['1969-12-31', '1969-12-29', '1970-01-04'],
  ['0000-01-01', '0000-01-01', '0000-01-02'],
  ['9999-12-31', '9999-12-27', '9999-12-31'],
])('the week of %s runs from %s to %s', (day, from, to) => {
  expect(weekOf(day)).toEqual({ from, to });
});

it('empty weeks between are there, a long gap is not', () => {
  const mondays = (days: readonly string[]) => weeksHolding(days).map(({ from }) => from);
  expect(mondays([])).toEqual([]);
  expect(mondays(['2027-02-20', '2027-02-03', '2027-02-02'])).toEqual([
    '2027-02-01',
    '2027-02-08',
    '2027-02-15',
  ]);
  expect(mondays(['2027-02-01', '2027-03-22'])).toHaveLength(8);
  expect(mondays(['2027-02-01', '2027-03-29'])).toEqual(['2027-02-01', '2027-03-29']);
});

it('things are put under the week of their day', () => {
  const things = ['2027-02-07', '2027-02-08', '2027-02-01'];
  expect([...byWeek(things, (day) => day)]).toEqual([
    ['2027-02-01', ['2027-02-07', '2027-02-01']],
    ['2027-02-08', ['2027-02-08']],
  ]);
});
