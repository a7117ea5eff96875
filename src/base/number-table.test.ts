import fc from 'fast-check';
import { expect, it } from 'vitest';
import { NumberTable } from './number-table.ts';

const whole = fc.oneof(fc.nat(20), fc.nat(2 ** 30));

it('keeps the last number of each key, as a Map does', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(whole, whole)), fc.array(whole), (pairs, asked) => {
      const table = new NumberTable(pairs.length);
      const map = new Map(pairs);
      for (const [key, number] of pairs) table.set(key, number);
      for (const key of [...asked, ...map.keys()]) expect(table.get(key)).toBe(map.get(key) ?? -1);
    }),
    { numRuns: 500 },
  );
});
