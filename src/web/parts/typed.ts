import { minorDigits } from '../../base/currency.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { stepOn } from '../../ledger/prices.ts';
import type { Lines } from '../../records/fields.ts';
import { say } from '../say.ts';

/** What a person typed, turned into whole numbers; what does not fit comes back as words. */

/**
 * Money as typed (`12`, `12.5`, `$1,200.00`, `12,50`) to whole minor units. Spaces and the
 * currency's sign are let be; the digits are cut as text, so nothing passes through a fraction.
 */
export function typedMoney(text: string, currency: string): Outcome<number, string> {
  const digits = minorDigits(currency);
  const bare = text.replace(/[\s\u00a0]|[A-Z]{3}|\p{Sc}/gu, '');
  const wanted = say`an amount like ${digits === 0 ? '1200' : `12.${'0'.repeat(digits)}`}`;
  const parts = /^(\d{1,3}(?:[,.'’]\d{3})+|\d+)?(?:[.,](\d*))?$/.exec(bare);
  if (parts === null || !/\d/.test(bare)) return refused(say`Write ${wanted}.`);
  const [whole = '', fraction = ''] = splitAmount(bare, digits);
  if (fraction.length > digits) return refused(say`Write ${wanted}: at most ${digits} decimals.`);
  const minor = Number(whole.replace(/\D/g, '') + fraction.padEnd(digits, '0'));
  return Number.isSafeInteger(minor) ? done(minor) : refused(say`Write a smaller amount.`);
}

/** The last mark parts off decimals unless exactly three digits follow it, as in `1,200`. */
function splitAmount(bare: string, digits: number): [whole: string, fraction: string] {
  const mark = Math.max(bare.lastIndexOf('.'), bare.lastIndexOf(','));
  if (mark < 0) return [bare, ''];
  const after = bare.slice(mark + 1);
  const thousands = after.length === 3 && digits !== 3 && mark > 0;
  return thousands ? [bare, ''] : [bare.slice(0, mark), after];
}

/** Minor units as a person would type them: `12.50`, without a sign or marks between thousands. */
export function moneyToType(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  const cut = text.length - digits;
  return digits === 0 ? text : `${text.slice(0, cut)}.${text.slice(cut)}`;
}

/** A whole number of 0 or more; an empty field counts as `empty`. */
export function typedWhole(text: string, empty = 0): Outcome<number, string> {
  const bare = text.replace(/[\s,.'’\u00a0]/g, '');
  if (bare === '') return done(empty);
  const whole = /^\d+$/.test(bare) ? Number(bare) : Number.NaN;
  return Number.isSafeInteger(whole) ? done(whole) : refused(say`Write a whole number.`);
}

/** Cases and singles as typed, by product. */
export type LinesTyped = Readonly<
  Record<string, { readonly cases: string; readonly singles: string }>
>;

/** Units a case holds on a day; 1 for a product without a case. */
export function caseUnits(ledger: Ledger, product: string, day: string): number {
  return stepOn(ledger.prices.get(product) ?? [], day)?.caseUnits ?? 1;
}

/**
 * Lines as typed to units by product. A product with both fields empty is left out; one that says 0
 * is kept only with `zeros` (counts). Refused: the fields that are not whole numbers, by product.
 */
export function typedLines(
  typed: LinesTyped,
  ledger: Ledger,
  day: string,
  zeros = false,
): Outcome<Lines, ReadonlyMap<string, string>> {
  const lines: Record<string, number> = {};
  const wrong = new Map<string, string>();
  for (const product in typed) {
    const { cases = '', singles = '' } = typed[product] ?? {};
    if (cases.trim() === '' && singles.trim() === '') continue;
    const inCases = typedWhole(cases);
    const single = typedWhole(singles);
    if (!inCases.ok || !single.ok) {
      wrong.set(product, say`Write whole numbers.`);
      continue;
    }
    const units = inCases.value * caseUnits(ledger, product, day) + single.value;
    if (units > 0 || zeros) lines[product] = units;
  }
  return wrong.size > 0 ? refused(wrong) : done(lines);
}

/** Units by product split back into full cases and singles, to fill a form for an edit. */
export function linesToType(lines: Lines, ledger: Ledger, day: string): LinesTyped {
  const typed: Record<string, { cases: string; singles: string }> = {};
  for (const product in lines) {
    const units = lines[product] ?? 0;
    const size = caseUnits(ledger, product, day);
    const cases = size > 1 ? Math.floor(units / size) : 0;
    typed[product] = {
      cases: cases === 0 ? '' : String(cases),
      singles: units - cases * size === 0 && cases > 0 ? '' : String(units - cases * size),
    };
  }
  return typed;
}
