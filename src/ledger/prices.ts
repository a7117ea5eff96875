import { byText } from '../base/order.ts';
import { byWritten, type RecordOf } from '../records/record.ts';

/** A price in minor units a unit, and units a case, from a day on. */
export interface PriceStep {
  readonly from: string;
  readonly price: number;
  readonly caseUnits: number;
  /** The product record that states it. */
  readonly record: string;
}

/** As much of a product record as decides prices. */
export type PricingProduct = Pick<
  RecordOf<'product'>,
  'kind' | 'id' | 'at' | 'product' | 'from' | 'price' | 'case'
>;

/** Prices by product, each list in order of its days; the first step also holds before its day. */
export type PriceSteps = ReadonlyMap<string, readonly PriceStep[]>;

/**
 * Prices of every product. Two product records for the same first day: the later written counts.
 * @param seasonStart the first day of a price that names none
 */
function priceSteps(products: Iterable<PricingProduct>, seasonStart: string): PriceSteps {
  const steps = new Map<string, Map<string, PriceStep>>();
  for (const product of [...products].sort(byWritten)) {
    const from = product.from ?? seasonStart;
    const byDay = steps.get(product.product) ?? new Map<string, PriceStep>();
    steps.set(product.product, byDay);
    byDay.set(from, { from, price: product.price, caseUnits: product.case, record: product.id });
  }
  const sorted = new Map<string, readonly PriceStep[]>();
  for (const [product, byDay] of steps) {
    sorted.set(
      product,
      [...byDay.values()].sort((a, b) => byText(a.from, b.from)),
    );
  }
  return sorted;
}

/**
 * Prices of a book from every product record that it has ever had. Goods of a product whose every
 * record was removed keep the price they had.
 * @param counts whether a record counts
 */
export function pricesOf<Product extends PricingProduct>(
  products: readonly Product[],
  counts: (product: Product) => boolean,
  seasonStart: string,
): PriceSteps {
  const counting = products.filter(counts);
  const named = new Set(counting.map((product) => product.product));
  const orphans = products.filter((product) => !named.has(product.product));
  return priceSteps([...counting, ...orphans], seasonStart);
}

/**
 * The step that holds on a day: the last one that began by then, or the first one of all.
 * Without a day, the last one of all.
 */
export function stepOn(
  steps: readonly PriceStep[],
  day: string | undefined,
): PriceStep | undefined {
  let holds = steps[0];
  for (let at = 1; at < steps.length; at += 1) {
    const step = steps[at];
    if (step !== undefined && (day === undefined || step.from <= day)) holds = step;
  }
  return holds;
}

/** The price in minor units on a day; 0 for a product that the book does not have. */
export function priceOn(prices: PriceSteps, product: string, day: string | undefined): number {
  const steps = prices.get(product);
  if (steps === undefined) return 0;
  if (steps.length === 1) return steps[0]?.price ?? 0;
  return stepOn(steps, day)?.price ?? 0;
}

/**
 * An amount for each product and day that is asked for again and again, each found once: a price
 * may have changed many times in a season, and a large book asks for it millions of times.
 */
export class DayAmounts {
  readonly #find: (product: string, day: string) => number;
  readonly #byDay = new Map<string, Map<string, number>>();
  #day: string | undefined;
  #onDay = new Map<string, number>();

  constructor(find: (product: string, day: string) => number) {
    this.#find = find;
  }

  of(product: string, day: string): number {
    if (this.#day !== day) this.#turn(day);
    const known = this.#onDay.get(product);
    if (known !== undefined) return known;
    const amount = this.#find(product, day);
    this.#onDay.set(product, amount);
    return amount;
  }

  #turn(day: string): void {
    const onDay = this.#byDay.get(day) ?? new Map<string, number>();
    this.#byDay.set(day, onDay);
    this.#day = day;
    this.#onDay = onDay;
  }
}
