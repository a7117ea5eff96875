import { minorDigits } from '../../base/currency.ts';

/** How amounts are written in a file: which mark stands before the decimals. */
export type DecimalMark = '.' | ',';

/**
 * An amount as written to minor units, exactly: `1,234.50`, `-12`, `(3.00)`, `12.50-`, `$ 4`,
 * `12.50 DR`. Undefined where it is no amount, or has more decimals than the currency.
 */
export function amountMinor(
  text: string,
  currency: string,
  mark: DecimalMark = '.',
): number | undefined {
  const { digits, isMinus } = signOf(text.replaceAll('−', '-').trim());
  const plain = digits.replace(/[\s\u00a0\u202f'’]|\b[A-Z]{3}\b|\p{Sc}/gu, '');
  if (!/^(?:\d[\d.,]*|[.,]\d+)$/.test(plain)) return undefined;
  const ungrouped = plain.replaceAll(mark === '.' ? ',' : '.', '');
  const [whole = '', decimals = '', ...more] = ungrouped.split(mark);
  if (more.length > 0) return undefined;
  const places = minorDigits(currency);
  const exact = decimals.replace(/0+$/, '');
  if (exact.length > places) return undefined;
  const minor = Number(`${whole}${exact.padEnd(places, '0')}`);
  if (!Number.isSafeInteger(minor)) return undefined;
  return isMinus && minor !== 0 ? -minor : minor;
}

/** The sign of an amount, wherever it is written: in front, behind, as brackets or as DR. */
function signOf(text: string): { readonly digits: string; readonly isMinus: boolean } {
  const drawn = /^(.*\d)\s*(DR|CR)\.?$/i.exec(text);
  if (drawn !== null) {
    return { digits: drawn[1] ?? '', isMinus: (drawn[2] ?? '').toUpperCase() === 'DR' };
  }
  const bracketed = /^[^\d(]*\((.+)\)$/.exec(text)?.[1];
  if (bracketed !== undefined) return { digits: bracketed, isMinus: true };
  const behind = /^(.+\d)\s*-$/.exec(text)?.[1];
  if (behind !== undefined) return { digits: behind, isMinus: true };
  const inFront = /^([^\d+-]*)([+-])(.*)$/.exec(text);
  if (inFront === null) return { digits: text, isMinus: false };
  return { digits: `${inFront[1] ?? ''}${inFront[3] ?? ''}`, isMinus: inFront[2] === '-' };
}

/** The mark that amounts of a column are written with: a comma before one or two last digits. */
export function decimalMarkOf(cells: readonly string[]): DecimalMark {
  return cells.some((cell) => /,\d{1,2}\D*$/.test(cell.trim())) ? ',' : '.';
}
