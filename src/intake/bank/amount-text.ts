import { minorDigits } from '../../base/currency.ts';

/** How amounts are written in a file: which mark stands before the decimals. */
export type DecimalMark = '.' | ',';

/**
 * An amount as written to minor units, exactly: `1,234.50`, `-12`, `(3.00)`, `12.50-`, `$ 4`.
 * Undefined where it is no amount, or has more decimals than the currency.
 */
export function amountMinor(
  text: string,
  currency: string,
  mark: DecimalMark = '.',
): number | undefined {
  const plain = text.replace(/[\s\u00a0\u202f'’]|[A-Z]{3}|\p{Sc}/gu, '').replace('−', '-');
  const inBrackets = /^\((.+)\)$/.exec(plain)?.[1];
  const signed = inBrackets === undefined ? plain : `-${inBrackets}`;
  const front = /^(.+)-$/.exec(signed)?.[1];
  const ordered = front === undefined ? signed : `-${front}`;
  const group = mark === '.' ? ',' : '.';
  const parts = /^([+-]?)(\d[\d.,]*|[.,]\d+)$/.exec(ordered);
  if (parts === null) return undefined;
  const [whole = '', decimals = '', ...more] = (parts[2] ?? '').replaceAll(group, '').split(mark);
  if (more.length > 0 || !/^\d*$/.test(whole + decimals)) return undefined;
  const digits = minorDigits(currency);
  const exact = decimals.replace(/0+$/, '');
  if (exact.length > digits) return undefined;
  const minor = Number(`${whole}${exact.padEnd(digits, '0')}`);
  if (!Number.isSafeInteger(minor)) return undefined;
  return parts[1] === '-' && minor !== 0 ? -minor : minor;
}
