import { expect, it } from 'vitest';
import { dayText } from './day-text.ts';

it('writes the month as a word, so that day and month cannot be mistaken', () => {
  expect(dayText('2027-03-12')).toBe('12 Mar 2027');
  expect(dayText('2027-12-03')).toBe('3 Dec 2027');
});

it('gives back what is not a day', () => {
  expect(dayText('')).toBe('');
  expect(dayText('soon')).toBe('soon');
});
