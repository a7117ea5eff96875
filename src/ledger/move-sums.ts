import type { Mover } from './posting.ts';

/**
 * Adds moves up by the two accounts they go between. The moves of one record, and of a whole book,
 * go between few pairs of accounts: adding them up here first, and each pair's sum to both accounts
 * once, halves the time of folding a large book.
 */
export class MoveSums implements Mover {
  readonly #stock = new PairSums();
  readonly #money = new PairSums();
  readonly #credit = new PairSums();
  #moved = 0;

  /** All that was moved, units and minor units together, whichever way it went. */
  get moved(): number {
    return this.#moved;
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    this.#stock.add(product, units, from, to);
  }

  money(minor: number, from: string, to: string): void {
    this.#moved += Math.abs(minor);
    this.#money.add('', minor, from, to);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    this.#credit.add(product, units, from, to);
  }

  /** Moves each sum once. */
  moveTo(mover: Mover): void {
    this.#stock.each((product, units, from, to) => mover.stock(product, units, from, to));
    this.#money.each((_, minor, from, to) => mover.money(minor, from, to));
    this.#credit.each((product, units, from, to) => mover.credit(product, units, from, to));
  }
}

type Sums = Map<string, { sum: number }>;

/** Sums by pair of accounts and by product. */
class PairSums {
  readonly #sums = new Map<string, Map<string, Sums>>();
  #from = '';
  #to = '';
  /** The sums of the pair that was asked for last. */
  #last: Sums | undefined;

  add(product: string, amount: number, from: string, to: string): void {
    const last = this.#from === from && this.#to === to ? this.#last : undefined;
    const sums = last ?? this.#turn(from, to);
    const known = sums.get(product);
    if (known === undefined) sums.set(product, { sum: amount });
    else known.sum += amount;
  }

  each(move: (product: string, amount: number, from: string, to: string) => void): void {
    for (const [from, byTo] of this.#sums) {
      for (const [to, sums] of byTo) {
        for (const [product, { sum }] of sums) move(product, sum, from, to);
      }
    }
  }

  #turn(from: string, to: string): Sums {
    let byTo = this.#sums.get(from);
    if (byTo === undefined) {
      byTo = new Map();
      this.#sums.set(from, byTo);
    }
    let sums = byTo.get(to);
    if (sums === undefined) {
      sums = new Map();
      byTo.set(to, sums);
    }
    this.#from = from;
    this.#to = to;
    this.#last = sums;
    return sums;
  }
}
