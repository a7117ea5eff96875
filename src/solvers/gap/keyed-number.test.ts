import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMultipleOfNine, truthsBehind } from './keyed-number.ts';

function slipsTo(keyed: number, truth: number): string[] {
  return truthsBehind(keyed)
    .filter(({ value }) => value === truth)
    .map(({ slip }) => slip);
}

describe('what a number may have been', () => {
  it.each([
    [21, 12, 'neighbours-swapped'],
    [18, 12, 'wrong-digit'],
    [120, 12, 'out-by-ten'],
    [5, 500, 'out-by-hundred'],
    [1, 12, 'digit-left-out'],
    [112, 12, 'digit-added'],
    [33, 44, 'twin'],
    [13, 30, 'teen-for-ten'],
    [512, 215, 'digits-swapped'],
  ])('keyed %i for %i: %s', (keyed, truth, slip) => {
    expect(slipsTo(keyed, truth)).toContain(slip);
  });

  it('is never the number itself, nothing, or one that begins with 0', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), (keyed) => {
        for (const { value, share } of truthsBehind(keyed)) {
          expect(value).not.toBe(keyed);
          expect(value).toBeGreaterThan(0);
          expect(share).toBeGreaterThan(0);
          expect(share).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('goes both ways: a slip from a to b is found from b, and a shift from either', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (keyed) => {
        for (const { value, slip } of truthsBehind(keyed)) {
          if (slip === 'digits-swapped' || slip === 'neighbours-swapped') {
            expect(slipsTo(value, keyed)).toContain(slip);
            expect(isMultipleOfNine(keyed - value)).toBe(true);
          }
        }
      }),
    );
  });

  it('the shares of the slips of one truth add up to about one', () => {
    const spread = new Map<string, number>();
    for (let keyed = 1; keyed <= 9999; keyed += 1) {
      for (const { value, slip, share } of truthsBehind(keyed)) {
        if (value !== 347) continue;
        spread.set(slip, (spread.get(slip) ?? 0) + share);
      }
    }
    for (const slip of ['wrong-digit', 'neighbours-swapped', 'digits-swapped']) {
      expect(spread.get(slip)).toBeGreaterThan(0.85);
      expect(spread.get(slip)).toBeLessThan(1.2);
    }
  });
});
