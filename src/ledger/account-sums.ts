import type { Mover } from './posting.ts';

/** Amounts by the number of their product; undefined where nothing was moved. */
type Row = (number | undefined)[];

/** What one ledger's accounts hold: a row of amounts by product for each account. */
class Rows {
  readonly #rows = new Map<string, Row>();
  /** The rows that were asked for last: the moves of a record go between the same two accounts. */
  #from = '';
  #to = '';
  #fromRow: Row | undefined;
  #toRow: Row | undefined;

  move(product: number, amount: number, from: string, to: string): void {
    if (from !== this.#from || this.#fromRow === undefined) {
      this.#from = from;
      this.#fromRow = this.#rowOf(from);
    }
    if (to !== this.#to || this.#toRow === undefined) {
      this.#to = to;
      this.#toRow = this.#rowOf(to);
    }
    this.#fromRow[product] = (this.#fromRow[product] ?? 0) - amount;
    this.#toRow[product] = (this.#toRow[product] ?? 0) + amount;
  }

  entries(): Iterable<[account: string, amounts: Readonly<Row>]> {
    return this.#rows;
  }

  #rowOf(account: string): Row {
    const known = this.#rows.get(account);
    if (known !== undefined) return known;
    const row: Row = [];
    this.#rows.set(account, row);
    return row;
  }
}

/**
 * Adds up the moves of a whole book. Does what Balances does and nothing else, in rows of numbers:
 * a large book makes millions of moves, and each costs one look for its product.
 */
export class AccountSums implements Mover {
  readonly #stock = new Rows();
  readonly #credit = new Rows();
  readonly #money = new Rows();
  readonly #products = new Map<string, number>();
  #moved = 0;

  /** All that was moved, units and minor units together, whichever way it went. */
  get moved(): number {
    return this.#moved;
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    this.#stock.move(this.#numberOf(product), units, from, to);
  }

  money(minor: number, from: string, to: string): void {
    if (minor === 0) return;
    this.#moved += Math.abs(minor);
    this.#money.move(0, minor, from, to);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    this.#credit.move(this.#numberOf(product), units, from, to);
  }

  /** Account → product → units. */
  table(ledger: 'stock' | 'credit'): Map<string, Map<string, number>> {
    const products = [...this.#products.keys()];
    const table = new Map<string, Map<string, number>>();
    for (const [account, row] of (ledger === 'stock' ? this.#stock : this.#credit).entries()) {
      const lines = new Map<string, number>();
      for (const [product, units] of row.entries()) {
        if (units !== undefined) lines.set(products[product] ?? '', units);
      }
      table.set(account, lines);
    }
    return table;
  }

  /** Account → minor units. */
  moneyTable(): Map<string, number> {
    return new Map([...this.#money.entries()].map(([account, [minor]]) => [account, minor ?? 0]));
  }

  #numberOf(product: string): number {
    const known = this.#products.get(product);
    if (known !== undefined) return known;
    const number = this.#products.size;
    this.#products.set(product, number);
    return number;
  }
}
