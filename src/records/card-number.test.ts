import { describe, expect, it } from 'vitest';
import { hasCardNumber, passesLuhn } from './card-number.ts';

/** Numbers that card schemes publish for tests (ISO/IEC 7812-1 check digits; no real cards). */
const NUMBER = '4111111111111111';
const inFours = (between: string) => NUMBER.match(/.{4}/g)?.join(between) ?? '';
const written = (digits: string, nought: number) =>
  String.fromCodePoint(...[...digits].map((digit) => nought + Number(digit)));

describe('a card number is found', () => {
  it.each([
    ['bare', NUMBER],
    ['in a sentence', `paid with ${NUMBER}, thanks`],
    ['with blanks', inFours(' ')],
    ['with dashes', inFours('-')],
    ['with dots', inFours('.')],
    ['with no-break spaces', inFours('\u00a0')],
    ['with narrow no-break spaces', inFours('\u202f')],
    ['with figure spaces', inFours('\u2007')],
    ['with ideographic spaces', inFours('\u3000')],
    ['with tabs', inFours('\t')],
    ['with en dashes', inFours('\u2013')],
    ['with non-breaking hyphens', inFours('\u2011')],
    ['with minus signs', inFours('\u2212')],
    ['with full-width dashes', inFours('\uff0d')],
    ['with zero-width spaces', inFours('\u200b')],
    ['with soft hyphens', inFours('\u00ad')],
    ['in full-width digits', written(NUMBER, 0xff10)],
    ['in mathematical digits', written(NUMBER, 0x1d7ce)],
    ['in Arabic digits', written(NUMBER, 0x660)],
    ['in Devanagari digits', written(NUMBER, 0x966)],
    ['in digits of two kinds', NUMBER.slice(0, 8) + written(NUMBER.slice(8), 0xff10)],
  ])('%s', (_how, text) => {
    expect(hasCardNumber(text)).toBe(true);
  });
});

describe('no card number is found', () => {
  it.each([
    ['in another number', '1111111111111'],
    ['in another full-width number', written('1111111111111', 0xff10)],
    ['in twelve digits', '411111111111'],
    ['over two blanks', '41111111  11111111'],
    ['over words', '41111111 and 11111111'],
    ['in words of any script', 'Ñandú Kő 中村 عمر'],
  ])('%s', (_where, text) => {
    expect(hasCardNumber(text)).toBe(false);
  });

  it('where a digit turned: every single one is noticed', () => {
    for (const [at, digit] of [...NUMBER].entries()) {
      const turned = `${NUMBER.slice(0, at)}${(Number(digit) + 1) % 10}${NUMBER.slice(at + 1)}`;
      expect(passesLuhn(turned)).toBe(false);
    }
  });
});
