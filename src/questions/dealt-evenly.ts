import { sortedEntries } from '../base/order.ts';
import type { Lines } from '../records/fields.ts';

/**
 * Even start values for a share-out by hand: units are dealt one after the other, product after
 * product in the order of their ids, to the sellers in the order given, each product going on where
 * the one before stopped. So each product is given out whole, no seller's share of a product is
 * more than one unit from even, and neither is any seller's total.
 *
 * @param pool whole units by product; a product below 1 is left out
 */
export function dealtEvenly(pool: Lines, sellers: readonly string[]): Record<string, Lines> {
  const shares = new Map(sellers.map((seller) => [seller, {} as Record<string, number>]));
  let turn = 0;
  for (const [product, units] of sortedEntries(pool)) {
    if (units < 1 || sellers.length === 0) continue;
    const each = Math.floor(units / sellers.length);
    const extra = units - each * sellers.length;
    sellers.forEach((seller, place) => {
      // Sellers whose turn comes within the units left over get one more.
      const wait = (place - turn + sellers.length) % sellers.length;
      const given = each + (wait < extra ? 1 : 0);
      const share = shares.get(seller);
      if (given > 0 && share !== undefined) share[product] = given;
    });
    turn = (turn + extra) % sellers.length;
  }
  return Object.fromEntries(shares);
}
