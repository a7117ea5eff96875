import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import { isMovement, type MovementRecord, type RecordOf } from '../records/record.ts';
import { unitsOf } from '../records/units-of.ts';

/** One product of a count, in units. Differences of different products are never netted. */
export interface CountedProduct {
  readonly product: string;
  /** Undefined where the book has units of a product that the count does not name. */
  readonly counted: number | undefined;
  /** Units in the stockroom by the book at the end of the count's day. */
  readonly book: number;
  /** Counted less book: negative is short, positive is over. */
  readonly difference: number;
  readonly state: 'agrees' | 'short' | 'over' | 'not-counted';
  /** Movements of that same day which were written after the count: check which side of it. */
  readonly movedAfter: readonly string[];
}

export interface CountDifference {
  readonly products: readonly CountedProduct[];
  readonly agrees: boolean;
  /** Units short and units over, each added up by itself. */
  readonly short: number;
  readonly over: number;
  /** Units of the largest difference, short or over, of a product that was counted. */
  readonly most: number;
  readonly movedAfter: readonly string[];
}

/** A saved count against the book, product by product. */
export function countDifference(ledger: Ledger, count: RecordOf<'count'>): CountDifference {
  const book = ledger.asOf(count.date);
  const movedAfter = movedAfterCount(ledger, count);
  const inBook = Object.keys(book.linesOf('stock', 'stockroom'));
  const names = [...new Set([...Object.keys(count.lines), ...inBook])].sort(byText);
  const products = names.map((product) =>
    countedProduct(
      product,
      Object.hasOwn(count.lines, product) ? count.lines[product] : undefined,
      book.stockOf('stockroom', product),
      movedAfter.filter(({ lines }) => Object.hasOwn(lines, product)).map(({ id }) => id),
    ),
  );
  return {
    products,
    agrees: products.every((product) => product.state === 'agrees'),
    short: sumOf(products, 'short'),
    over: sumOf(products, 'over'),
    most: Math.max(0, ...products.map(sizeOf)),
    movedAfter: movedAfter.map(({ id }) => id),
  };
}

/** The counts of the stockroom that stand, the last one first; sheets of stalls are none. */
export function countsLastFirst(ledger: Ledger): RecordOf<'count'>[] {
  const counts = ledger.movements().filter((movement) => movement.kind === 'count');
  return counts.filter(({ sheet }) => sheet === undefined).reverse();
}

function countedProduct(
  product: string,
  counted: number | undefined,
  book: number,
  movedAfter: readonly string[],
): CountedProduct {
  const difference = (counted ?? 0) - book;
  const state =
    counted === undefined
      ? 'not-counted'
      : difference === 0
        ? 'agrees'
        : difference < 0
          ? 'short'
          : 'over';
  return { product, counted, book, difference, state, movedAfter };
}

function sizeOf({ state, difference }: CountedProduct): number {
  return state === 'not-counted' ? 0 : Math.abs(difference);
}

function sumOf(products: readonly CountedProduct[], state: 'short' | 'over'): number {
  return products
    .filter((product) => product.state === state)
    .reduce((sum, product) => sum + Math.abs(product.difference), 0);
}

interface StockroomMove {
  readonly id: string;
  readonly lines: Lines;
}

/** Written later than the count but dated on its day: the count may not have seen them yet. */
function movedAfterCount(ledger: Ledger, count: RecordOf<'count'>): StockroomMove[] {
  const found: StockroomMove[] = [];
  for (const record of ledger.standing.records()) {
    if (!isMovement(record) || record.date !== count.date) continue;
    if (byText(record.at, count.at) <= 0 || !ledger.standing.counts(record)) continue;
    const lines = stockroomLines(ledger, record);
    if (Object.keys(lines).length > 0) found.push({ id: record.id, lines });
  }
  return found.sort((a, b) => byText(a.id, b.id));
}

/** Units by product that a movement takes into (or, negative, out of) the stockroom. */
function stockroomLines(ledger: Ledger, movement: MovementRecord): Lines {
  const lines: Record<string, number> = {};
  ledger.postingsTo(movement, {
    stock: (product, units, from, to) => {
      const entering = (to === 'stockroom' ? units : 0) - (from === 'stockroom' ? units : 0);
      if (entering !== 0) lines[product] = unitsOf(lines, product) + entering;
    },
    money: () => {},
    credit: () => {},
  });
  return lines;
}
