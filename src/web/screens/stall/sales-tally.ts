import type { Lines } from '../../../records/fields.ts';
import type { BookAddress } from '../../connection.ts';

/**
 * The sales of a stall as they are tapped, one product id a sale, the last one last. It is no
 * record: the count at the end is. It stays on this device until the stall is settled, so that a
 * phone that falls asleep or is closed loses no tap.
 */
export type SalesTally = readonly string[];

const PRODUCT = /^[a-z0-9-]+$/;

/** Units sold by product. */
export function unitsTapped(tally: SalesTally): Lines {
  const units: Record<string, number> = {};
  for (const product of tally) units[product] = (units[product] ?? 0) + 1;
  return units;
}

/** The tally that this device keeps for a stall; empty where there is none or it is damaged. */
export function keptTally(book: BookAddress, stall: string, storage: Storage): SalesTally {
  const text = storage.getItem(keyOf(book, stall)) ?? '';
  return text.split(' ').filter((product) => PRODUCT.test(product));
}

/** Keeps a tally; false where the device has no room for it. */
export function keepTally(
  book: BookAddress,
  stall: string,
  tally: SalesTally,
  storage: Storage,
): boolean {
  try {
    if (tally.length === 0) storage.removeItem(keyOf(book, stall));
    else storage.setItem(keyOf(book, stall), tally.join(' '));
    return true;
  } catch {
    return false;
  }
}

function keyOf({ group, season }: BookAddress, stall: string): string {
  return `cratebook.sales ${group} ${season} ${stall}`;
}
