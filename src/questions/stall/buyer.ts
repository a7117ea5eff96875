import { secondsBetween } from '../../base/local-time.ts';
import { sum } from '../../base/sum.ts';
import type { Lines } from '../../records/fields.ts';
import type { StallEntry } from '../../records/stall-entry.ts';
import { addedLines, phoneOf } from './stall-sheet.ts';

/** After so long without a tap, the next one is another buyer's: nobody waits that long. */
const NEXT_BUYER_SECONDS = 120;

/** The buyer whom a phone serves now, from its own taps. */
export interface Buyer {
  readonly lines: Lines;
  readonly units: number;
  /** How this buyer paid; the next sale is then the next buyer's. */
  readonly paid: StallEntry | undefined;
  /** The phone's last tap that counts: what Undo takes back. */
  readonly last: StallEntry | undefined;
}

/**
 * The current buyer of one phone. A buyer's sales begin after the one before has paid, or after two
 * minutes without a tap; each sale counts the moment it is tapped, whatever comes after.
 *
 * @param entries of a sheet, in order of time
 * @param phone its three signs
 */
export function currentBuyer(entries: readonly StallEntry[], phone: string): Buyer {
  const taps = entries.filter(
    (entry) => phoneOf(entry) === phone && (entry.what === 'sold' || entry.what === 'paid'),
  );
  const last = taps.at(-1);
  const paid = last?.what === 'paid' ? last : undefined;
  const sales: StallEntry[] = [];
  let next = paid;
  for (const tap of taps.slice(0, paid === undefined ? undefined : -1).reverse()) {
    if (tap.what === 'paid') break;
    // A buyer may take a while to find the money: only sales are parted by a pause.
    const pause = next === undefined || next === paid ? 0 : secondsBetween(tap.at, next.at);
    if (pause >= NEXT_BUYER_SECONDS) break;
    sales.unshift(tap);
    next = tap;
  }
  const lines = addedLines(sales);
  return {
    lines,
    units: sum(Object.values(lines)),
    paid,
    last,
  };
}
