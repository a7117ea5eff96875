/**
 * Currencies by their ISO 4217 code: how many digits the minor unit has, and the sign people write.
 * Digits: ISO 4217 list one, published 2024-06-25. A code that is not here counts two digits, as
 * nearly all do. Signs: the short local sign (common practice); a season has one currency, so a
 * sign that several countries share is not mistaken.
 */

const DIGITS_USUAL = 2;

const CODES_BY_DIGITS: readonly (readonly [digits: number, codes: string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
];

const DIGITS: ReadonlyMap<string, number> = new Map(
  CODES_BY_DIGITS.flatMap(([digits, codes]) =>
    codes.split(' ').map((code): [string, number] => [code, digits]),
  ),
);

const SIGNS: ReadonlyMap<string, string> = new Map([
  ['USD', '$'],
  ['CAD', '$'],
  ['AUD', '$'],
  ['NZD', '$'],
  ['SGD', '$'],
  ['HKD', '$'],
  ['MXN', '$'],
  ['EUR', '€'],
  ['GBP', '£'],
  ['JPY', '¥'],
  ['CNY', '¥'],
  ['INR', '₹'],
  ['KRW', '₩'],
  ['ILS', '₪'],
  ['NGN', '₦'],
  ['PHP', '₱'],
  ['UAH', '₴'],
  ['VND', '₫'],
]);

/** Decimal digits of a currency's minor unit: 2 for USD (cents), 0 for JPY, 3 for BHD. */
export function minorDigits(currency: string): number {
  return DIGITS.get(currency) ?? DIGITS_USUAL;
}

/** The sign written before an amount, like `$`; undefined where the code itself is written. */
export function currencySign(currency: string): string | undefined {
  return SIGNS.get(currency);
}
