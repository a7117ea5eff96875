import type { MovementRecord } from '../records/record.ts';
import { type Mover, type PostingContext, post } from './posting.ts';
import { DayAmounts, type PriceSteps, priceOn } from './prices.ts';

/**
 * Posts movements into balances, and revalues what moves through the stockroom from the price of
 * its day to the price of the balance day (`goods` against `losses`). Because revaluation is linear
 * in units, doing it move by move gives what revaluing the whole stockroom on each new price's
 * first day gives, in any order; a test holds the two equal.
 */
export class Fold implements Mover {
  readonly #into: Mover;
  readonly #context: PostingContext;
  /** What a unit is worth more on the balance day than on another day. */
  readonly #rises: DayAmounts;
  readonly #asOf: string | undefined;
  readonly #sign: 1 | -1;
  /** The day of the movement that is being posted. */
  #day = '';

  /**
   * @param pointedAt what bounces and returned debits stand for
   * @param asOf the balance day; undefined after all that is recorded
   * @param sign -1 takes movements out again
   */
  constructor(
    into: Mover,
    prices: PriceSteps,
    pointedAt: Pick<PostingContext, 'paymentOf' | 'debitOf'>,
    asOf?: string,
    sign: 1 | -1 = 1,
  ) {
    this.#into = into;
    this.#rises = new DayAmounts(
      (product, day) => priceOn(prices, product, asOf) - priceOn(prices, product, day),
    );
    this.#asOf = asOf;
    this.#sign = sign;
    const onDay = new DayAmounts((product, day) => priceOn(prices, product, day));
    this.#context = {
      priceOn: (product, day) => onDay.of(product, day),
      paymentOf: (id) => pointedAt.paymentOf(id),
      debitOf: (id) => pointedAt.debitOf(id),
    };
  }

  /** Posts a movement that counts, unless it is dated after the balance day. */
  post(movement: MovementRecord): void {
    if (this.#asOf !== undefined && movement.date > this.#asOf) return;
    this.#day = movement.date;
    post(movement, this.#context, this);
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#into.stock(product, this.#sign * units, from, to);
    if (to === 'stockroom') this.#revalue(product, units);
    if (from === 'stockroom') this.#revalue(product, -units);
  }

  money(minor: number, from: string, to: string): void {
    this.#into.money(this.#sign * minor, from, to);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#into.credit(product, this.#sign * units, from, to);
  }

  #revalue(product: string, entering: number): void {
    const rise = this.#rises.of(product, this.#day);
    this.#into.money(this.#sign * entering * rise, 'losses', 'goods');
  }
}
