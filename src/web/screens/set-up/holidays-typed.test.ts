import { expect, it } from 'vitest';
import { readHolidays } from './holidays-typed.ts';

it.each([
  ['', []],
  ['2027-05-31\n2027-02-15\n', ['2027-02-15', '2027-05-31']],
  [' 2027-02-15, 2027-02-15;2027-07-05 ', ['2027-02-15', '2027-07-05']],
])('%j is %j', (text, value) => {
  expect(readHolidays(text)).toEqual({ ok: true, value });
});

it.each([['31/05/2027'], ['2027-02-30'], ['2027-05-31 Memorial']])('%j names no day', (text) => {
  const read = readHolidays(text);
  expect(read.ok ? '' : read.refusal).toContain('is no day');
});
