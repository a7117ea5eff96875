import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minorDigits } from '../base/currency.ts';
import { customsOf } from './customs.ts';
import { languageFor, languages } from './language.ts';

const [english, spanish, chinese] = ['en', 'es', 'zh'].map((tag) => customsOf(languageFor(tag)));

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
    [250, '', '\u00a02.50'],
  ])('%i minor units of %s are %s', (minor, currency, text) => {
    expect(english?.money(minor, currency)).toBe(text);
  });

  it('reads alike on an English, a Spanish and a Chinese paper of one family', () => {
    const said = [english, spanish, chinese].map((customs) => customs?.money(123450, 'USD'));
    expect(said).toEqual(['$1,234.50', '$1,234.50', '$1,234.50']);
  });

  it.each(languages)(
    'loses nothing in $name: it reads back to the same whole number',
    (language) => {
      const { amount } = customsOf(language);
      const currencies = fc.constantFrom('USD', 'JPY', 'BHD', 'CLF');
      fc.assert(fc.property(fc.maxSafeNat(), currencies, readsBackWith(amount)));
    },
  );

  it('would be caught losing a cent by going through a fraction', () => {
    const format = new Intl.NumberFormat('en-US', { minimumFractionDigits: 2 });
    const throughFraction = (minor: number) => format.format(minor / 100);
    const reading = (minor: number) => readsBack(throughFraction(minor), minor);
    const checked = fc.check(fc.property(fc.maxSafeNat(), reading), { numRuns: 1000, seed: 1 });
    expect(checked.failed).toBe(true);
  });
});

describe('units as text', () => {
  it('sets thousands apart, and zero has no sign', () => {
    const said = [0, -0, 12, 999, 1000, 1234567, -3].map((units) => english?.units(units));
    expect(said).toEqual(['0', '0', '12', '999', '1,000', '1,234,567', '\u22123']);
  });

  it('tells parts of a unit to two places', () => {
    const said = [12.666, 19, 0.4, -0.5, 1234.5].map((units) => english?.parts(units));
    expect(said).toEqual(['12.67', '19', '0.4', '\u22120.5', '1234.5']);
  });
});

describe('days as text', () => {
  it('writes the month as a word, so that day and month cannot be mistaken', () => {
    expect(english?.day('2027-03-12')).toBe('12 Mar 2027');
    expect(english?.day('2027-09-03')).toBe('3 Sep 2027');
    expect(spanish?.day('2027-03-12')).toBe('12 mar 2027');
    expect(chinese?.day('2027-03-12')).toBe('2027年3月12日');
  });

  it('gives back what is not a day', () => {
    expect(['', 'soon', '2027-02-30'].map((day) => english?.day(day))).toEqual([
      '',
      'soon',
      '2027-02-30',
    ]);
  });
});

it('joins names as the language does', () => {
  const names = ['Ada', 'Ben', 'Cleo'];
  const said = [english, spanish, chinese].map((customs) => customs?.list(names));
  expect(said).toEqual(['Ada, Ben and Cleo', 'Ada, Ben y Cleo', 'Ada、Ben和Cleo']);
});

function readsBackWith(amount: (minor: number, currency: string) => string) {
  return (minor: number, currency: string): void => {
    const text = amount(minor, currency);
    expect(readsBack(text, minor)).toBe(true);
    expect(text.split('.')[1]?.length ?? 0).toBe(minorDigits(currency));
  };
}

function readsBack(text: string, minor: number): boolean {
  return Number(text.replace(/[.,]/g, '')) === minor;
}
