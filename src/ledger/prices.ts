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

/** Prices by product, each list in order of its days; the first step also holds before its day. */
export type PriceSteps = ReadonlyMap<string, readonly PriceStep[]>;

/**
 * Prices of every product. Two product records for the same first day: the later written counts.
 * @param seasonStart the first day of a price that names none
 */
export function priceSteps(
  products: Iterable<RecordOf<'product'>>,
  seasonStart: string,
): PriceSteps {
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
 * The step that holds on a day: the last one that began by then, or the first one of all.
 * Without a day, the last one of all.
 */
export function stepOn(
  steps: readonly PriceStep[],
  day: string | undefined,
): PriceStep | undefined {
  let holds = steps[0];
  for (const step of steps) {
    if (day === undefined || step.from <= day) holds = step;
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
 * Prices that are asked for day by day, each found once a day: a price may have changed many times
 * in a season, and a large book asks for it millions of times.
 */
export class DayPrices {
  readonly #prices: PriceSteps;
  readonly #byDay = new Map<string | undefined, Map<string, number>>();
  #day: string | undefined;
  #onDay: Map<string, number> | undefined;

  constructor(prices: PriceSteps) {
    this.#prices = prices;
  }

  /** The price in minor units on a day, as `priceOn` gives it. */
  priceOn(product: string, day: string | undefined): number {
    const onDay = this.#day === day && this.#onDay !== undefined ? this.#onDay : this.#turn(day);
    const known = onDay.get(product);
    if (known !== undefined) return known;
    const price = priceOn(this.#prices, product, day);
    onDay.set(product, price);
    return price;
  }

  #turn(day: string | undefined): Map<string, number> {
    const onDay = this.#byDay.get(day) ?? new Map<string, number>();
    this.#byDay.set(day, onDay);
    this.#day = day;
    this.#onDay = onDay;
    return onDay;
  }
}
