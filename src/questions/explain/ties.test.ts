import { expect, it } from 'vitest';
import { tiesOf, withTies } from './ties.ts';

const third = 0.1 + 0.2;
const list = [0.5, 0.3, third, 0.01].map((odds) => ({ odds }));

it('takes odds that differ by the order of adding up as a tie', () => {
  expect(third).not.toBe(0.3);
  expect(tiesOf(list)).toEqual([1, 2, 2, 1]);
});

it('never cuts a tie in two', () => {
  expect([1, 2, 3, 4, 5].map((count) => withTies(list, count))).toEqual([1, 3, 3, 4, 4]);
});
