import { describe, expect, it } from 'vitest';
import { dayOf, dayOrderOf } from './day-cell.ts';

describe('a cell as a day', () => {
  it.each([
    ['2027-02-03', 'day-month-year', '2027-02-03'],
    ['02/03/2027', 'month-day-year', '2027-02-03'],
    ['02/03/2027', 'day-month-year', '2027-03-02'],
    ['3.2.27', 'day-month-year', '2027-02-03'],
    ['3 Feb 2027', 'month-day-year', '2027-02-03'],
    ['Feb 3, 2027', 'day-month-year', '2027-02-03'],
    ['20270203', 'year-month-day', '2027-02-03'],
    ['2027-02-03T10:15:00', 'year-month-day', '2027-02-03'],
    ['02/03/2027 10:15', 'month-day-year', '2027-02-03'],
  ] as const)('%s read as %s is %s', (cell, order, day) => {
    expect(dayOf(cell, order)).toBe(day);
  });

  it.each(['', 'x', '31/31/2027', '2027-02-30', '12', '2027'])('%s is none', (cell) => {
    expect(dayOf(cell, 'day-month-year')).toBeUndefined();
  });
});

describe('the order of the days of a column', () => {
  it.each([
    [['02/15/2027', '03/04/2027'], 'month-day-year'],
    [['15/02/2027', '04/03/2027'], 'day-month-year'],
    [['02/03/2027', '02/09/2027', '03/01/2027'], 'month-day-year'],
    [['02/02/2027', '03/04/2027', '04/05/2027'], undefined],
    [['2027-02-03'], 'year-month-day'],
    [['3.4.2027', '4.5.2027'], 'day-month-year'],
    [['03/03/2027', '04/04/2027'], 'month-day-year'],
    [['03/04/2027'], undefined],
    [['02/15/2027', '31/31/2027', '03/22/2027'], 'month-day-year'],
    [['x', ''], undefined],
  ] as const)('%j: %s', (cells, order) => {
    expect(dayOrderOf(cells)).toBe(order);
  });
});
