import { sum } from '../base/sum.ts';
import type { Mover } from './posting.ts';

/** Amounts by the number of their product; undefined where nothing was moved. */
type Row = (number | undefined)[];

/** Rows as plain data that can go from one thread to another. */
interface PackedRows {
  readonly accounts: readonly string[];
  /** For each amount the number of its account, the number of its product, and the amount. */
  readonly cells: Float64Array<ArrayBuffer>;
}

/** Sums as plain data that can go from one thread to another. */
export interface PackedSums {
  readonly products: readonly string[];
  readonly stock: PackedRows;
  readonly credit: PackedRows;
  readonly money: PackedRows;
  readonly moved: number;
}

/** Numbers of a cell. */
const CELL = 3;

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

  packed(): PackedRows {
    const cells = new Float64Array(sum([...this.#rows.values()].map((row) => row.length)) * CELL);
    let [at, account] = [0, 0];
    for (const row of this.#rows.values()) {
      for (let product = 0; product < row.length; product += 1) {
        const amount = row[product];
        if (amount === undefined) continue;
        cells[at] = account;
        cells[at + 1] = product;
        cells[at + 2] = amount;
        at += CELL;
      }
      account += 1;
    }
    return { accounts: [...this.#rows.keys()], cells: cells.subarray(0, at) };
  }

  /** @param numberOf the number that a product of theirs has here */
  add({ accounts, cells }: PackedRows, numberOf: (product: number) => number): void {
    const rows = accounts.map((account) => this.#rowOf(account));
    for (let at = 0; at < cells.length; at += CELL) {
      const row = rows[cells[at] ?? 0];
      const product = numberOf(cells[at + 1] ?? 0);
      if (row !== undefined) row[product] = (row[product] ?? 0) + (cells[at + 2] ?? 0);
    }
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
  /** One number, in an array so that it may grow large without being made anew as another type. */
  readonly #moved = new Float64Array(1);

  /** All that was moved, units and minor units together, whichever way it went. */
  get moved(): number {
    return this.#moved[0] ?? 0;
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#addMoved(Math.abs(units));
    this.#stock.move(this.#numberOf(product), units, from, to);
  }

  money(minor: number, from: string, to: string): void {
    if (minor === 0) return;
    this.#addMoved(Math.abs(minor));
    this.#money.move(0, minor, from, to);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#addMoved(Math.abs(units));
    this.#credit.move(this.#numberOf(product), units, from, to);
  }

  /** Account → product → units, without zeros. */
  table(ledger: 'stock' | 'credit'): Map<string, Map<string, number>> {
    const products = [...this.#products.keys()];
    const table = new Map<string, Map<string, number>>();
    for (const [account, row] of (ledger === 'stock' ? this.#stock : this.#credit).entries()) {
      const lines = new Map<string, number>();
      for (let product = 0; product < row.length; product += 1) {
        const units = row[product];
        if (units !== undefined && units !== 0) lines.set(products[product] ?? '', units);
      }
      if (lines.size > 0) table.set(account, lines);
    }
    return table;
  }

  /** Account → minor units. */
  moneyTable(): Map<string, number> {
    return new Map([...this.#money.entries()].map(([account, [minor]]) => [account, minor ?? 0]));
  }

  packed(): PackedSums {
    return {
      products: [...this.#products.keys()],
      stock: this.#stock.packed(),
      credit: this.#credit.packed(),
      money: this.#money.packed(),
      moved: this.moved,
    };
  }

  /** Adds what other records of the same book moved. */
  add(sums: PackedSums): void {
    const numbers = sums.products.map((product) => this.#numberOf(product));
    const numberOf = (product: number) => numbers[product] ?? 0;
    this.#stock.add(sums.stock, numberOf);
    this.#credit.add(sums.credit, numberOf);
    this.#money.add(sums.money, (only) => only);
    this.#addMoved(sums.moved);
  }

  #addMoved(amount: number): void {
    const moved = this.#moved;
    moved[0] = (moved[0] ?? 0) + amount;
  }

  #numberOf(product: string): number {
    const known = this.#products.get(product);
    if (known !== undefined) return known;
    const number = this.#products.size;
    this.#products.set(product, number);
    return number;
  }
}
