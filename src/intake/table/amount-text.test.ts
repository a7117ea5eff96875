import { describe, expect, it } from 'vitest';
import { amountMinor, decimalMarkOf } from './amount-text.ts';

describe('an amount as written', () => {
  it.each([
    ['1,234.50', 123_450],
    ['-12', -1200],
    ['−12.5', -1250],
    ['(3.00)', -300],
    ['$ (3.00)', -300],
    ['12.50-', -1250],
    ['-$4', -400],
    ['$-4', -400],
    ['USD 1 234.00', 123_400],
    ['12.50 DR', -1250],
    ['12.50CR', 1250],
    ['0.000', 0],
    ['-0.00', 0],
    ['.5', 50],
  ])('%s is %i cents', (text, cents) => {
    expect(amountMinor(text, 'USD')).toBe(cents);
  });

  it.each(['', 'x', '1.234', '1.2.3', '--3', '=1+1', '1e5', '12.50 owed', '90071992547409.93'])(
    '%s is none',
    (text) => {
      expect(amountMinor(text, 'USD')).toBeUndefined();
    },
  );

  it('has the decimals of its currency and the mark of its column', () => {
    expect(amountMinor('1.234,5', 'EUR', ',')).toBe(123_450);
    expect(amountMinor('1,234', 'JPY')).toBe(1234);
    expect(amountMinor('1.234', 'BHD')).toBe(1234);
    expect(decimalMarkOf(['1.234', '12,50 €'])).toBe(',');
    expect(decimalMarkOf(['1,234', '12.50'])).toBe('.');
  });
});
