import type { Say } from '../words/say.ts';

/**
 * A part of a unit as a decimal with at most two places: `0.4`, `12.67`, `19`. For people only;
 * nothing is worked out from it again.
 */
export function partsText(units: number, say: Say): string {
  return say.parts(rounded(units));
}

/** Parts of a unit with their word: `0.4 of a unit`, `1 unit`, `1.5 units`. */
export function ofUnits(units: number, say: Say): string {
  const size = rounded(units);
  if (Number.isInteger(size)) return say.count(size)`# unit|# units`;
  const parts = say.parts(size);
  return size < 1 ? say`${parts} of a unit` : say`${parts} units`;
}

/** To two places, half up in size, so that nobody is told more than anybody can use. */
export function rounded(units: number): number {
  const size = Math.round(Math.abs(units) * 100) / 100;
  return units < 0 ? 0 - size : size;
}
