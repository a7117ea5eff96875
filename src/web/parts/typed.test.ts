import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { linesToType, moneyToType, typedLines, typedMoney, typedWhole } from './typed.ts';

describe('money as typed', () => {
  it.each<[string, string, number]>([
    ['12', 'USD', 1200],
    ['12.5', 'USD', 1250],
    ['12,50', 'EUR', 1250],
    ['$1,200.00', 'USD', 120000],
    ['1.200,00', 'EUR', 120000],
    ['1,200', 'USD', 120000],
    ['1 200', 'USD', 120000],
    ['.5', 'USD', 50],
    ['0', 'USD', 0],
    ['1200', 'JPY', 1200],
    ['1,200', 'JPY', 1200],
    ['1.234', 'BHD', 1234],
    ['USD 7', 'USD', 700],
    ['7.', 'USD', 700],
  ])('%s in %s is %i minor units', (text, currency, minor) => {
    expect(typedMoney(text, currency)).toEqual({ ok: true, value: minor });
  });

  it.each([
    ['', 'USD'],
    ['twelve', 'USD'],
    ['-5', 'USD'],
    ['1.2345', 'USD'],
    ['12.50', 'JPY'],
    ['1,2,3', 'USD'],
    ['99999999999999999', 'USD'],
    ['.', 'USD'],
  ])('%s in %s is refused with words', (text, currency) => {
    const read = typedMoney(text, currency);
    expect(read.ok).toBe(false);
  });

  it('reads back every amount that it writes', () => {
    const currencies = fc.constantFrom('USD', 'JPY', 'BHD', 'CLF');
    fc.assert(
      fc.property(fc.maxSafeNat(), currencies, (minor, currency) => {
        expect(typedMoney(moneyToType(minor, currency), currency)).toEqual({
          ok: true,
          value: minor,
        });
      }),
    );
  });

  it('would be caught going through a fraction', () => {
    const throughFraction = (text: string) => Math.floor(Number(text) * 100);
    const checked = fc.check(
      fc.property(fc.nat(100_000), (minor) => throughFraction(moneyToType(minor, 'USD')) === minor),
      { seed: 1, numRuns: 1000 },
    );
    expect(checked.failed).toBe(true);
  });
});

test('whole numbers may have marks between thousands, and nothing else', () => {
  expect(typedWhole(' 1,200 ')).toEqual({ ok: true, value: 1200 });
  expect(typedWhole('', 3)).toEqual({ ok: true, value: 3 });
  expect(typedWhole('1.5e3').ok).toBe(false);
  expect(typedWhole('-1').ok).toBe(false);
});

describe('cases and singles', () => {
  const ledger = testBook({ honey: 800, jam: 650 }, []).ledger([]);
  const day = '2027-02-03';

  it('add up to units, products with nothing typed left out', () => {
    const typed = {
      honey: { cases: '2', singles: '3' },
      jam: { cases: '', singles: '' },
    };
    expect(typedLines(typed, ledger, day)).toEqual({ ok: true, value: { honey: 27 } });
  });

  it('keep a zero where zeros are facts', () => {
    const typed = { honey: { cases: '', singles: '0' } };
    expect(typedLines(typed, ledger, day)).toEqual({ ok: true, value: {} });
    expect(typedLines(typed, ledger, day, true)).toEqual({ ok: true, value: { honey: 0 } });
  });

  it('say which product is wrong', () => {
    const read = typedLines({ jam: { cases: 'x', singles: '' } }, ledger, day);
    expect(read.ok ? [] : [...read.refusal.keys()]).toEqual(['jam']);
  });

  it('come back as they would be typed', () => {
    const lines = { honey: 27, jam: 12 };
    const typed = linesToType(lines, ledger, day);
    expect(typed).toEqual({
      honey: { cases: '2', singles: '3' },
      jam: { cases: '1', singles: '' },
    });
    expect(typedLines(typed, ledger, day)).toEqual({ ok: true, value: lines });
  });
});
