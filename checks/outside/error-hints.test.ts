import { describe, expect, it } from 'vitest';
import { testBook } from '../../src/ledger/test-book.ts';
import { explain } from '../../src/questions/explain/explain.ts';
import { readObservation } from '../../src/questions/explain/observation.ts';
import { isMultipleOfNine, truthsBehind } from '../../src/solvers/gap/keyed-number.ts';

/**
 * The bookkeeper's rules for a difference: a whole number of nines suggests digits that changed
 * places, or a shift by one place; ninety-nines a shift by two; half the difference an amount on
 * the wrong side. Sources beside each; amounts in minor units where the source has cents.
 */
const OPENSTAX = 'OpenStax, Principles of Accounting, volume 1, section 3.6';
const KESTER =
  'R. B. Kester, Accounting: Theory and Practice, volume 1 (1917), chapter XXV, rule 6';
const DEMYSTIFIED = 'Accounting Demystified, chapter 3';
const HERMANSON = 'an open textbook, error of the trial balance';

const swapped = [
  [3500, 5300, 'neighbours-swapped', OPENSTAX],
  [64500, 46500, 'neighbours-swapped', OPENSTAX],
  [65000, 56000, 'neighbours-swapped', DEMYSTIFIED],
  [753, 573, 'neighbours-swapped', HERMANSON],
  [110, 101, 'neighbours-swapped', HERMANSON],
  [6394, 3694, 'neighbours-swapped', KESTER],
  [512, 215, 'digits-swapped', KESTER],
  [514, 415, 'digits-swapped', KESTER],
  [735, 537, 'digits-swapped', KESTER],
  [981, 189, 'digits-swapped', KESTER],
  [5174, 4175, 'digits-swapped', KESTER],
  [6392, 2396, 'digits-swapped', KESTER],
  [7081, 1087, 'digits-swapped', KESTER],
] as const;

const shifted = [
  [73600, 7360, 'out-by-ten', 9, KESTER],
  [73600, 736, 'out-by-hundred', 99, KESTER],
  [150000, 1500, 'out-by-hundred', 99, HERMANSON],
] as const;

/** Differences that no swap or shift of digits makes. */
const neither = [
  [60040, 59440, 'IRS, Publication 583, bank reconciliation'],
  [2000, 1760, 'OpenStax, volume 1, chapter 8, Feeter'],
] as const;

function slips(correct: number, wrong: number): string[] {
  return truthsBehind(wrong)
    .filter(({ value }) => value === correct)
    .map(({ slip }) => slip);
}

describe('divide by nine', () => {
  it.each(swapped)('%i written as %i: %s (%s)', (correct, wrong, slip) => {
    expect(isMultipleOfNine(correct - wrong)).toBe(true);
    expect(slips(correct, wrong)).toContain(slip);
  });

  it.each(shifted)('%i written as %i: %s, divisible by %i (%s)', (correct, wrong, slip, by) => {
    expect((correct - wrong) % by).toBe(0);
    expect(slips(correct, wrong)).toContain(slip);
  });

  it.each(neither)('%i written as %i is no swap and no shift (%s)', (correct, wrong) => {
    expect(isMultipleOfNine(correct - wrong)).toBe(false);
    const found = slips(correct, wrong);
    for (const slip of ['neighbours-swapped', 'digits-swapped', 'out-by-ten', 'out-by-hundred']) {
      expect(found).not.toContain(slip);
    }
  });
});

/** The amount on the wrong side, and the difference it makes: always twice as much. */
const wrongSide = [
  [100, 200, OPENSTAX],
  [400, 800, HERMANSON],
] as const;

describe('divide by two', () => {
  it.each(wrongSide)('%i on the wrong side is off by %i (%s)', (amount, difference) => {
    const book = testBook({ honey: 100 }, ['ada']);
    const keyed = book.movement('refund', { seller: 'ada', tender: 'cash', cents: amount });
    const ledger = book.ledger([keyed]);
    const seen = { 'money:owed:ada': amount - difference, 'money:cashbox': difference - amount };
    const observed = readObservation(ledger, seen);
    const [first] = observed.ok ? explain(ledger, observed.value).explanations : [];
    expect(first?.kind).toBe('wrong-way');
    expect(first?.edits).toEqual([{ op: 'change', record: keyed.id, fields: { kind: 'payment' } }]);
  });

  it('an odd difference has no half, so nothing on the wrong side makes it', () => {
    const book = testBook({ honey: 100 }, ['ada']);
    const keyed = book.movement('refund', { seller: 'ada', tender: 'cash', cents: 100 });
    const ledger = book.ledger([keyed]);
    const observed = readObservation(ledger, { 'money:owed:ada': -101, 'money:cashbox': 101 });
    const found = observed.ok ? explain(ledger, observed.value).explanations : [];
    expect(found.map(({ kind }) => kind)).not.toContain('wrong-way');
  });
});
