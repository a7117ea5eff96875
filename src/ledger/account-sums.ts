import type { Mover } from './posting.ts';

/** Amounts as plain data that can go from one thread to another. */
interface PackedCells {
  readonly accounts: readonly string[];
  /** For each amount the number of its account, the number of its product, and the amount. */
  readonly cells: Float64Array<ArrayBuffer>;
}

/** Sums as plain data that can go from one thread to another. */
export interface PackedSums {
  readonly products: readonly string[];
  readonly stock: PackedCells;
  readonly credit: PackedCells;
  readonly money: PackedCells;
  readonly moved: number;
}

/** Numbers of a packed cell. */
const CELL = 3;
const SLOTS_FIRST = 1024;
/** Products whose amounts stand side by side, as far as there is room. */
const NEAR_BITS = 4;
const NEAR = (1 << NEAR_BITS) - 1;

/**
 * What one ledger's accounts hold: an amount for each product that an account ever had, by the
 * numbers of both (open addressing with linear probing). A large book has tens of thousands of
 * accounts, and an object for each took longer than all that is added up.
 */
class Cells {
  readonly #numbers = new Map<string, number>();
  /** Pairs by slot: account + 1, and product. An account of 0 is an empty slot. */
  #keys = new Int32Array(SLOTS_FIRST * 2);
  #amounts = new Float64Array(SLOTS_FIRST);
  #size = 0;
  /** The accounts that were asked for last: the moves of a record go between the same two. */
  #from = '';
  #to = '';
  #fromNumber = NONE;
  #toNumber = NONE;

  move(product: number, amount: number, from: string, to: string): void {
    if (from !== this.#from || this.#fromNumber === NONE) {
      this.#from = from;
      this.#fromNumber = this.#numberOf(from);
    }
    if (to !== this.#to || this.#toNumber === NONE) {
      this.#to = to;
      this.#toNumber = this.#numberOf(to);
    }
    this.#addTo(this.#fromNumber, product, -amount);
    this.#addTo(this.#toNumber, product, amount);
  }

  /** Every amount that is not zero. */
  *entries(): Generator<readonly [account: string, product: number, amount: number]> {
    const accounts = [...this.#numbers.keys()];
    for (let slot = 0; slot < this.#amounts.length; slot += 1) {
      const account = (this.#keys[slot * 2] ?? 0) - 1;
      const amount = this.#amounts[slot] ?? 0;
      if (account < 0 || amount === 0) continue;
      yield [accounts[account] ?? '', this.#keys[slot * 2 + 1] ?? 0, amount];
    }
  }

  packed(): PackedCells {
    const cells = new Float64Array(this.#size * CELL);
    let at = 0;
    for (let slot = 0; slot < this.#amounts.length; slot += 1) {
      const account = (this.#keys[slot * 2] ?? 0) - 1;
      if (account < 0) continue;
      cells[at] = account;
      cells[at + 1] = this.#keys[slot * 2 + 1] ?? 0;
      cells[at + 2] = this.#amounts[slot] ?? 0;
      at += CELL;
    }
    return { accounts: [...this.#numbers.keys()], cells };
  }

  /** @param numberOf the number that a product of theirs has here */
  add({ accounts, cells }: PackedCells, numberOf: (product: number) => number): void {
    const numbers = accounts.map((account) => this.#numberOf(account));
    for (let at = 0; at < cells.length; at += CELL) {
      const account = numbers[cells[at] ?? 0] ?? 0;
      this.#addTo(account, numberOf(cells[at + 1] ?? 0), cells[at + 2] ?? 0);
    }
  }

  #addTo(account: number, product: number, amount: number): void {
    let slot = this.#slotOf(account, product);
    if (this.#keys[slot * 2] === 0) {
      if (this.#size * 2 >= this.#amounts.length) {
        this.#grow();
        slot = this.#slotOf(account, product);
      }
      this.#size += 1;
      this.#keys[slot * 2] = account + 1;
      this.#keys[slot * 2 + 1] = product;
    }
    this.#amounts[slot] = (this.#amounts[slot] ?? 0) + amount;
  }

  /** The slot of an amount, or the empty one where it belongs. */
  #slotOf(account: number, product: number): number {
    const keys = this.#keys;
    const mask = this.#amounts.length - 1;
    const hash = Math.imul(account, 0x9e3779b1) ^ Math.imul(product >>> NEAR_BITS, 0x85ebca6b);
    let slot = (((hash ^ (hash >>> 15)) << NEAR_BITS) | (product & NEAR)) & mask;
    for (;;) {
      const kept = keys[slot * 2];
      if (kept === 0 || (kept === account + 1 && keys[slot * 2 + 1] === product)) return slot;
      slot = (slot + 1) & mask;
    }
  }

  #grow(): void {
    const [keys, amounts] = [this.#keys, this.#amounts];
    this.#keys = new Int32Array(keys.length * 4);
    this.#amounts = new Float64Array(amounts.length * 4);
    for (let old = 0; old < amounts.length; old += 1) {
      const [account = 0, product = 0] = [keys[old * 2], keys[old * 2 + 1]];
      if (account === 0) continue;
      const slot = this.#slotOf(account - 1, product);
      this.#keys[slot * 2] = account;
      this.#keys[slot * 2 + 1] = product;
      this.#amounts[slot] = amounts[old] ?? 0;
    }
  }

  #numberOf(account: string): number {
    const known = this.#numbers.get(account);
    if (known !== undefined) return known;
    this.#numbers.set(account, this.#numbers.size);
    return this.#numbers.size - 1;
  }
}

/** No account was asked for yet. */
const NONE = -1;

/**
 * Adds up the moves of a whole book. Does what Balances does and nothing else, in numbers: a large
 * book makes millions of moves, and each costs one look for its product and one for each account.
 */
export class AccountSums implements Mover {
  readonly #stock = new Cells();
  readonly #credit = new Cells();
  readonly #money = new Cells();
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
    const cells = ledger === 'stock' ? this.#stock : this.#credit;
    for (const [account, product, units] of cells.entries()) {
      const lines = table.get(account) ?? new Map<string, number>();
      table.set(account, lines.set(products[product] ?? '', units));
    }
    return table;
  }

  /** Account → minor units, without zeros. */
  moneyTable(): Map<string, number> {
    return new Map(Array.from(this.#money.entries(), ([account, , minor]) => [account, minor]));
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
