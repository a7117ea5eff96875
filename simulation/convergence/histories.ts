import fc from 'fast-check';
import type { History, Step } from './history.ts';

/** Random histories of two or three phones, a few days long. */
const does: readonly (readonly [Step['does'], number])[] = [
  ['pay', 6],
  ['hand out', 4],
  ['edit', 4],
  ['remove', 3],
  ['rename', 2],
  ['drop seller', 1],
  ['exchange', 5],
  ['reopen', 2],
  ['wipe', 1],
  ['late mail', 2],
  ['clock', 2],
];
const fates: readonly (readonly [Step['fate'], number])[] = [
  ['answered', 4],
  ['lost', 6],
  ['answer lost', 3],
  ['twice', 1],
  ['late', 2],
];

function weighted<T>(rows: readonly (readonly [T, number])[]): fc.Arbitrary<T> {
  return fc.oneof(...rows.map(([value, weight]) => ({ arbitrary: fc.constant(value), weight })));
}

const step: fc.Arbitrary<Step> = fc.record({
  phone: fc.nat(2),
  does: weighted(does),
  fate: weighted(fates),
  pick: fc.nat(40),
  killAt: fc.oneof(
    { arbitrary: fc.constant(0), weight: 4 },
    { arbitrary: fc.integer({ min: 1, max: 5 }), weight: 1 },
  ),
});

export const histories: fc.Arbitrary<History> = fc.record({
  seed: fc.nat(),
  phones: fc.integer({ min: 2, max: 3 }),
  steps: fc.array(step, { minLength: 3, maxLength: 30 }),
});
