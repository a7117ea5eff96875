/**
 * A part of a unit as a plain decimal with at most two places: `0.4`, `12.67`, `19`. For people
 * only; nothing is worked out from it again.
 */
export function partsText(units: number): string {
  const size = Math.round(Math.abs(units) * 100) / 100;
  const text = size.toFixed(2).replace(/\.?0+$/, '');
  return units < 0 && size !== 0 ? `\u2212${text}` : text;
}
