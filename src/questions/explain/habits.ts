import type { Lines } from '../../records/fields.ts';
import type { MovementKind } from '../../records/record.ts';
import type { Situation } from './situation.ts';

/**
 * What is usual in a book: how many records of a kind, how many units a line, what amounts. Gives
 * the chance of a number or of lines before anything is known about a mistake, so that a keyed
 * number which is unusual for its book is doubted first.
 */
export class Habits {
  readonly #kinds = new Map<MovementKind, number>();
  readonly #numbers = new Map<MovementKind, Map<string, Numbers>>();
  readonly #lineCounts = new Map<MovementKind, number[]>();
  readonly #products: number;

  constructor(situation: Situation) {
    this.#products = Math.max(1, situation.ledger.prices.size);
    for (const record of situation.entries) {
      this.#kinds.set(record.kind, this.countOf(record.kind) + 1);
      const fields = situation.fieldsOf(record);
      let lines = 0;
      for (const { part, product, value } of fields) {
        this.#numbersOf(record.kind, part).add(value);
        if (product !== undefined) lines += 1;
      }
      const counts = this.#lineCounts.get(record.kind) ?? [];
      this.#lineCounts.set(record.kind, counts);
      counts[lines] = (counts[lines] ?? 0) + 1;
    }
  }

  countOf(kind: MovementKind): number {
    return this.#kinds.get(kind) ?? 0;
  }

  /** Chance of a number in a part of a kind; `without` is one keyed number to leave out. */
  chanceOf(kind: MovementKind, part: string, value: number, without?: number): number {
    return this.#numbersOf(kind, part).chance(value, without);
  }

  /** How near a number is to what is usual, from 0 to 1. */
  likeness(kind: MovementKind, part: string, value: number): number {
    return this.#numbersOf(kind, part).likeness(value);
  }

  /**
   * Chance that a record of the kind has just these lines.
   * @param choice how many products there were to choose from; without it, all of the book
   */
  chanceOfLines(kind: MovementKind, lines: Lines, choice = this.#products): number {
    const named = Object.values(lines).filter((units) => units > 0);
    const counts = this.#lineCounts.get(kind) ?? [];
    const all = counts.reduce((sum, count) => sum + (count ?? 0), 0);
    let chance = ((counts[named.length] ?? 0) + 1) / (all + this.#products);
    for (let picked = 0; picked < named.length; picked += 1) {
      chance *= (picked + 1) / Math.max(picked + 1, choice - picked);
    }
    for (const units of named) chance *= this.chanceOf(kind, 'lines', units);
    return chance;
  }

  #numbersOf(kind: MovementKind, part: string): Numbers {
    const byPart = this.#numbers.get(kind) ?? new Map<string, Numbers>();
    const known = byPart.get(part);
    if (known !== undefined) return known;
    const numbers = new Numbers(GOODS_PARTS.has(part));
    this.#numbers.set(kind, byPart.set(part, numbers));
    return numbers;
  }
}

const GOODS_PARTS: ReadonlySet<string> = new Set(['lines', 'out', 'back', 'damaged']);

/** How rounded an amount is: the largest of these that divides it. Minor units. */
const ROUNDINGS: readonly number[] = [10_000, 5_000, 1_000, 500, 100, 50, 25, 10, 5, 1];
/** Numbers of observations that what is usual everywhere is worth beside the book's own. */
const PRIOR_WEIGHT = { goods: 12, money: 4 } as const;
/** What is usual before a book says otherwise: natural logarithms of units and of minor units. */
const USUAL = { goods: { mean: 1.6, spread: 1 }, money: { mean: 8, spread: 1.5 } } as const;

/** The numbers keyed in one part of one kind. */
class Numbers {
  readonly #isGoods: boolean;
  readonly #counts = new Map<number, number>();
  readonly #byRounding = new Map<number, number>();
  #all = 0;
  #sum = 0;
  #squares = 0;

  constructor(isGoods: boolean) {
    this.#isGoods = isGoods;
  }

  add(value: number): void {
    if (value <= 0) return;
    this.#all += 1;
    this.#counts.set(value, (this.#counts.get(value) ?? 0) + 1);
    const log = Math.log(value);
    this.#sum += log;
    this.#squares += log * log;
    if (this.#isGoods) return;
    const rounding = roundingOf(value);
    this.#byRounding.set(rounding, (this.#byRounding.get(rounding) ?? 0) + 1);
  }

  chance(value: number, without?: number): number {
    if (value <= 0) return 1 / (this.#all + 2);
    const own = without === undefined || without <= 0 ? 0 : 1;
    const all = this.#all - own;
    const smooth = this.#smooth(value, all, own === 1 ? without : undefined);
    if (!this.#isGoods)
      return smooth * this.#roundness(value, all, own === 1 ? without : undefined);
    const seen = (this.#counts.get(value) ?? 0) - (own === 1 && without === value ? 1 : 0);
    return (seen + PRIOR_WEIGHT.goods * smooth) / (all + PRIOR_WEIGHT.goods);
  }

  likeness(value: number): number {
    const { mean, spread } = this.#curve(this.#all, undefined);
    return Math.exp(-0.5 * ((Math.log(value) - mean) / spread) ** 2);
  }

  /** A log-normal curve over the numbers, drawn towards what is usual where there are few. */
  #smooth(value: number, all: number, without: number | undefined): number {
    const { mean, spread } = this.#curve(all, without);
    const off = (Math.log(value) - mean) / spread;
    return Math.exp(-0.5 * off * off) / (spread * Math.sqrt(2 * Math.PI) * value);
  }

  #curve(all: number, without: number | undefined): { mean: number; spread: number } {
    const usual = this.#isGoods ? USUAL.goods : USUAL.money;
    const left = without === undefined ? 0 : Math.log(without);
    const prior = this.#isGoods ? PRIOR_WEIGHT.goods : PRIOR_WEIGHT.money;
    const weight = all + prior;
    const mean = (this.#sum - left + prior * usual.mean) / weight;
    const square =
      (this.#squares - left ** 2 + prior * (usual.mean ** 2 + usual.spread ** 2)) / weight;
    return { mean, spread: Math.max(0.3, Math.sqrt(Math.max(0, square - mean ** 2))) };
  }

  /** How much more often amounts are as round as this than chance would have it. */
  #roundness(value: number, all: number, without: number | undefined): number {
    const rounding = roundingOf(value);
    const own = without !== undefined && roundingOf(without) === rounding ? 1 : 0;
    const seen = (this.#byRounding.get(rounding) ?? 0) - own;
    const natural = NATURAL.get(rounding) ?? 1;
    return (seen + 2 * natural + 0.2) / (all + 4) / natural;
  }
}

function roundingOf(value: number): number {
  return ROUNDINGS.find((rounding) => value % rounding === 0) ?? 1;
}

/** The part of all whole numbers with each rounding, counted over one full cycle. */
const NATURAL: ReadonlyMap<number, number> = naturalRoundings();

function naturalRoundings(): Map<number, number> {
  const cycle = ROUNDINGS[0] ?? 1;
  const parts = new Map<number, number>();
  for (let value = 1; value <= cycle; value += 1) {
    const rounding = roundingOf(value);
    parts.set(rounding, (parts.get(rounding) ?? 0) + 1 / cycle);
  }
  return parts;
}
