import { minorDigits } from '../../base/currency.ts';
import { denominations } from '../denominations.ts';

/** What a buyer may hand over for a sum, and the change of it. Minor units throughout. */

/** Amounts offered beside the exact one: more could not be told apart in a hurry. */
const OFFERS_MAX = 5;

/** Pieces that exist and that nobody has in a box to give back (from memory). Minor units. */
const SELDOM: Readonly<Record<string, readonly number[]>> = { USD: [200, 50] };

/** The notes and coins that go over a stall's table, largest first. */
export function piecesInHand(currency: string): number[] {
  const seldom = SELDOM[currency] ?? [];
  return denominations(currency).filter((value) => !seldom.includes(value));
}

/**
 * Amounts that a buyer is likely to hand over, the exact sum first, then upwards: the next full
 * amount of each note or coin that is worth a whole unit of the currency. None holds a piece that
 * could be left out, so nobody is offered to give $15 for $4.
 */
export function tenderOffers(total: number, currency: string): number[] {
  if (total <= 0) return [];
  const whole = 10 ** minorDigits(currency);
  const rounded = piecesInHand(currency)
    .filter((value) => value >= whole)
    .map((value) => Math.ceil(total / value) * value)
    .filter((amount) => amount > total);
  const upwards = [...new Set(rounded)].sort((a, b) => a - b).slice(0, OFFERS_MAX);
  return [total, ...upwards];
}

export interface Change {
  /** Handed over less the sum; negative where it is not enough yet. */
  readonly change: number;
  /** Notes and coins that make the change up, largest first; the fewest pieces. */
  readonly pieces: readonly { readonly value: number; readonly count: number }[];
  /** Minor units of the change that no note or coin of the currency makes up. */
  readonly rest: number;
}

/**
 * The change of a sum, with the notes and coins to give. Taking the largest piece first gives the
 * fewest pieces in every currency of the list (its systems are canonical; a test checks each
 * against all ways).
 */
export function changeDue(total: number, handed: number, currency: string): Change {
  let rest = Math.max(0, handed - total);
  const pieces: { value: number; count: number }[] = [];
  for (const value of piecesInHand(currency)) {
    const count = Math.floor(rest / value);
    if (count > 0) pieces.push({ value, count });
    rest -= count * value;
  }
  return { change: handed - total, pieces, rest };
}
