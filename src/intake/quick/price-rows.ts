import type { BookRecord, Kind } from '../../records/record.ts';

/** Numbers of a row. */
const ROW = 6;
/** Stands in a row for a product or a day that is not named. */
const NONE = -1;

/** True for the kinds that decide prices, beside which records count. */
export function decidesPrices(kind: Kind): boolean {
  return kind === 'product' || kind === 'season';
}

/** What decides prices, as plain data that can go from one thread to another. */
export interface PriceFacts {
  /** Rows: place, product, first day, price in minor units, units a case, instantNumber. */
  readonly rows: Float64Array<ArrayBuffer>;
  /** The products and days that the rows name by number. */
  readonly words: readonly string[];
}

/** A product's price from a day on, or a season with its first day. */
export interface PriceRow {
  readonly place: number;
  /** Undefined for a season. */
  readonly product: string | undefined;
  /** Undefined for a price that holds from the season's start. */
  readonly from: string | undefined;
  /** Minor units. */
  readonly price: number;
  readonly caseUnits: number;
  /** An instantNumber. */
  readonly written: number;
}

/** Keeps of product records and seasons what decides prices. */
export class PriceRows {
  readonly #rows: number[] = [];
  readonly #words = new Map<string, number>();

  /** @param record of a kind that decides prices; of others nothing is kept */
  add(place: number, record: BookRecord, written: number): void {
    if (record.kind === 'season') {
      this.#rows.push(place, NONE, this.#word(record.starts), 0, 0, written);
    } else if (record.kind === 'product') {
      const product = this.#word(record.product);
      const from = record.from === undefined ? NONE : this.#word(record.from);
      this.#rows.push(place, product, from, record.price, record.case, written);
    }
  }

  facts(): PriceFacts {
    return { rows: Float64Array.from(this.#rows), words: [...this.#words.keys()] };
  }

  #word(text: string): number {
    const known = this.#words.get(text);
    if (known !== undefined) return known;
    this.#words.set(text, this.#words.size);
    return this.#words.size - 1;
  }
}

/** @param start the place in the book of the first record of the part that says these */
export function* priceRowsOf({ rows, words }: PriceFacts, start: number): Generator<PriceRow> {
  for (let at = 0; at < rows.length; at += ROW) {
    yield {
      place: start + (rows[at] ?? 0),
      product: words[rows[at + 1] ?? NONE],
      from: words[rows[at + 2] ?? NONE],
      price: rows[at + 3] ?? 0,
      caseUnits: rows[at + 4] ?? 0,
      written: rows[at + 5] ?? 0,
    };
  }
}
