import { instantText } from '../base/instant-number.ts';
import type { JoinedParts } from '../intake/quick/joined-parts.ts';
import type { PriceRow } from '../intake/quick/price-rows.ts';
import { type PriceSteps, type PricingProduct, pricesOf } from '../ledger/prices.ts';

/**
 * The prices of a quickly read book, by the rule of pricesOf. Of the product records that name one
 * first day only the last written matters, among those that count and among those that do not: so
 * of the thousands that a large book may have, few are ever made.
 *
 * @param overruled by place: 1 where a record does not count
 */
export function quickPrices(parts: JoinedParts, overruled: Uint8Array): PriceSteps {
  const latest = new Map<string, PriceRow>();
  let season: PriceRow | undefined;
  const isLast = (row: PriceRow, other: PriceRow | undefined) =>
    other === undefined || parts.isLater(row, other);
  for (const row of parts.priceRows()) {
    const counts = overruled[row.place] === 0;
    if (row.product === undefined) {
      if (counts && isLast(row, season)) season = row;
      continue;
    }
    const key = `${row.product} ${row.from ?? ''} ${counts}`;
    if (isLast(row, latest.get(key))) latest.set(key, row);
  }
  const products = Array.from(latest.values(), (row) => productOf(parts, row));
  return pricesOf(products, ({ place }) => overruled[place] === 0, season?.from ?? '');
}

function productOf(parts: JoinedParts, row: PriceRow): PricingProduct & Pick<PriceRow, 'place'> {
  return {
    place: row.place,
    kind: 'product',
    id: parts.idAt(row.place),
    at: instantText(row.written),
    product: row.product ?? '',
    ...(row.from === undefined ? {} : { from: row.from }),
    price: row.price,
    case: row.caseUnits,
  };
}
