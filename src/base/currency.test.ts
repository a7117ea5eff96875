import { describe, expect, it } from 'vitest';
import { currencySign, minorDigits } from './currency.ts';
import { iso4217Digits } from './iso4217.fixture.ts';

describe('minor unit digits', () => {
  it('are those of ISO 4217 list one of 2024-06-25, for all of its 166 codes', () => {
    const published = Object.entries(iso4217Digits).flatMap(([digits, codes]) =>
      codes.split(' ').map((code) => [code, Number(digits)]),
    );
    expect(published).toHaveLength(166);
    expect(published.map(([code]) => [code, minorDigits(String(code))])).toEqual(published);
  });

  it('are two for a code that the list does not have', () => {
    expect(minorDigits('QQQ')).toBe(2);
  });
});

describe('currency signs', () => {
  it('are given for common currencies only', () => {
    expect(currencySign('USD')).toBe('$');
    expect(currencySign('GBP')).toBe('£');
    expect(currencySign('CHF')).toBeUndefined();
  });
});
