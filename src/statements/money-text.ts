import { currencySign, minorDigits } from '../base/currency.ts';

/**
 * Amounts of money as text, the same on every machine: `$1,234.50`, `¥1,235`, `CHF 7.00`.
 * Digits are cut from the whole number's own text, so no amount ever passes through a fraction.
 */

const GROUP = 3;
/** Keeps a currency code and its amount on one line. */
const NO_BREAK_SPACE = '\u00a0';
const MINUS = '\u2212';

/**
 * @param minor whole minor units. Direction belongs in words ("still to pay", "in credit"), so
 * callers pass amounts without a sign; a negative one keeps a minus so that it is never lost.
 * @param currency ISO 4217 code
 */
export function moneyText(minor: number, currency: string): string {
  const sign = currencySign(currency) ?? `${currency}${NO_BREAK_SPACE}`;
  return `${minor < 0 ? MINUS : ''}${sign}${decimalText(Math.abs(minor), minorDigits(currency))}`;
}

/** The amount without the currency's sign, for table columns whose head names the currency. */
export function amountText(minor: number, currency: string): string {
  return `${minor < 0 ? MINUS : ''}${decimalText(Math.abs(minor), minorDigits(currency))}`;
}

/** Whole units with thousands set apart: `12,000`. */
export function unitsText(units: number): string {
  return `${units < 0 ? MINUS : ''}${decimalText(Math.abs(units), 0)}`;
}

function decimalText(whole: number, digits: number): string {
  const text = String(whole).padStart(digits + 1, '0');
  const major = grouped(text.slice(0, text.length - digits));
  return digits === 0 ? major : `${major}.${text.slice(text.length - digits)}`;
}

function grouped(digits: string): string {
  const groups: string[] = [];
  for (let end = digits.length; end > 0; end -= GROUP) {
    groups.unshift(digits.slice(Math.max(0, end - GROUP), end));
  }
  return groups.join(',');
}
