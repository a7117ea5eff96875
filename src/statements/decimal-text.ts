/**
 * Minor units as a plain decimal for other programs: `1234.50`, `-7.00`, `1235` for yen. A hyphen
 * for minus, a point, no grouping; digits are cut from the whole number's text, never divided.
 *
 * @param minor whole minor units
 * @param digits minor digits of the currency (ISO 4217)
 */
export function decimalText(minor: number, digits: number): string {
  const sign = minor < 0 ? '-' : '';
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  if (digits === 0) return `${sign}${text}`;
  return `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}
