import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minorDigits } from '../base/currency.ts';
import { amountText, moneyText, unitsText } from './money-text.ts';

describe('money as text', () => {
  it.each([
    [123450, 'USD', '$1,234.50'],
    [0, 'USD', '$0.00'],
    [5, 'USD', '$0.05'],
    [100000000, 'EUR', '€1,000,000.00'],
    [1235, 'JPY', '¥1,235'],
    [1234567, 'KWD', 'KWD\u00a01,234.567'],
    [7, 'CLF', 'CLF\u00a00.0007'],
    [700, 'CHF', 'CHF\u00a07.00'],
    [Number.MAX_SAFE_INTEGER, 'USD', '$90,071,992,547,409.91'],
    [-250, 'USD', '\u2212$2.50'],
  ])('%i minor units of %s are %s', (minor, currency, text) => {
    expect(moneyText(minor, currency)).toBe(text);
  });

  it('loses nothing: the text reads back to the same whole number', () => {
    fc.assert(fc.property(fc.maxSafeNat(), fc.constantFrom('USD', 'JPY', 'BHD', 'CLF'), readsBack));
  });

  it('would be caught losing a cent by going through a fraction', () => {
    const throughFraction = (minor: number) => (minor / 100).toFixed(2);
    const reading = (minor: number) => Number(throughFraction(minor).replace('.', '')) === minor;
    const checked = fc.check(fc.property(fc.maxSafeNat(), reading), { numRuns: 1000, seed: 1 });
    expect(checked.failed).toBe(true);
  });
});

describe('units as text', () => {
  it('sets thousands apart', () => {
    expect([0, 12, 999, 1000, 1234567].map(unitsText)).toEqual([
      '0',
      '12',
      '999',
      '1,000',
      '1,234,567',
    ]);
  });
});

function readsBack(minor: number, currency: string): void {
  const text = amountText(minor, currency);
  expect(Number(text.replace(/[.,]/g, ''))).toBe(minor);
  expect(text).toMatch(/^\d{1,3}(,\d{3})*(\.\d+)?$/);
  expect(text.split('.')[1]?.length ?? 0).toBe(minorDigits(currency));
}
