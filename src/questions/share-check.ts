import { byText } from '../base/order.ts';
import type { Lines } from '../records/fields.ts';
import { unitsOf } from '../records/units-of.ts';

/** What a share-out by hand leaves in its pool, in units. */
export interface ShareCheck {
  /** By product: in the pool, given so far, and still to give (negative: too much given). */
  readonly products: readonly {
    readonly product: string;
    readonly pool: number;
    readonly given: number;
    readonly left: number;
  }[];
  readonly totals: Readonly<Record<string, number>>;
  readonly left: number;
  /** Products of which more is given than the pool has. */
  readonly tooMuch: readonly string[];
}

/** @param pool whole units by product; @param shares whole units by seller and product */
export function shareCheck(pool: Lines, shares: Readonly<Record<string, Lines>>): ShareCheck {
  const given = new Map<string, number>();
  const totals: Record<string, number> = {};
  for (const seller in shares) {
    let total = 0;
    for (const product in shares[seller]) {
      const units = shares[seller]?.[product] ?? 0;
      given.set(product, (given.get(product) ?? 0) + units);
      total += units;
    }
    totals[seller] = total;
  }
  const names = [...new Set([...Object.keys(pool), ...given.keys()])].sort(byText);
  const products = names.map((product) => {
    const units = unitsOf(pool, product);
    const out = given.get(product) ?? 0;
    return { product, pool: units, given: out, left: units - out };
  });
  return {
    products,
    totals,
    // Too much of one product is never netted against another still to give.
    left: products.reduce((sum, product) => sum + Math.max(0, product.left), 0),
    tooMuch: products.filter(({ left }) => left < 0).map(({ product }) => product),
  };
}
