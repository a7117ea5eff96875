import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instantNumber, instantText } from './instant-number.ts';

const encoder = new TextEncoder();
const instants = fc
  .date({
    min: new Date('0000-01-01T00:00:00Z'),
    max: new Date('9999-12-31T23:59:59Z'),
    noInvalidDate: true,
  })
  .map((date) => date.toISOString());
const numberOf = (text: string) => instantNumber(encoder.encode(`"${text}"`), 1);

describe('a time as a number', () => {
  it('is the same time again as text', () => {
    fc.assert(fc.property(instants, (text) => instantText(numberOf(text)) === text));
    expect(instantText(numberOf('2028-02-29T23:59:59.999Z'))).toBe('2028-02-29T23:59:59.999Z');
  });

  it('is exact, and earlier where the text is', () => {
    fc.assert(
      fc.property(instants, instants, (a, b) => {
        expect(Number.isSafeInteger(numberOf(a))).toBe(true);
        expect(Math.sign(numberOf(a) - numberOf(b))).toBe(a < b ? -1 : Number(a > b));
      }),
    );
  });
});
