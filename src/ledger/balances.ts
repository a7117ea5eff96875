import { sortedEntries } from '../base/order.ts';
import type { AccountSums } from './account-sums.ts';
import type { Mover } from './posting.ts';

/** Balances of one ledger: account → commodity → whole number. Zeros may be present. */
export type Table = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** The three ledgers as plain data for a file or a screen; zero balances are left out. */
export interface BalancesByAccount {
  /** Units by product, then account. */
  readonly stock: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Minor units by account. */
  readonly money: Readonly<Record<string, number>>;
  /** Units of credit by product, then account. */
  readonly credit: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const MONEY = 'money';

/**
 * Adds moves up to balances. Sums are exact while everything ever moved stays within safe
 * integers; `exact` says whether it did, so that no balance is ever silently rounded.
 */
export class Balances implements Mover {
  #stock = new Map<string, Map<string, number>>();
  #credit = new Map<string, Map<string, number>>();
  #money = new Map<string, number>();
  #moved = 0;

  stock(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    add(this.#stock, from, product, -units);
    add(this.#stock, to, product, units);
  }

  money(minor: number, from: string, to: string): void {
    if (minor === 0) return;
    this.#moved += Math.abs(minor);
    this.#money.set(from, (this.#money.get(from) ?? 0) - minor);
    this.#money.set(to, (this.#money.get(to) ?? 0) + minor);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#moved += Math.abs(units);
    add(this.#credit, from, product, -units);
    add(this.#credit, to, product, units);
  }

  /** Of moves that were added up before. */
  static of(sums: AccountSums): Balances {
    const balances = new Balances();
    balances.#stock = sums.table('stock');
    balances.#credit = sums.table('credit');
    balances.#money = sums.moneyTable();
    balances.#moved = sums.moved;
    return balances;
  }

  /** False where sums may have left the safe integers: no balance may then be shown. */
  get exact(): boolean {
    return this.#moved <= Number.MAX_SAFE_INTEGER;
  }

  stockOf(account: string, product: string): number {
    return this.#stock.get(account)?.get(product) ?? 0;
  }

  creditOf(account: string, product: string): number {
    return this.#credit.get(account)?.get(product) ?? 0;
  }

  moneyOf(account: string): number {
    return this.#money.get(account) ?? 0;
  }

  /** All units of an account, products together (for totals people read, never for a check). */
  unitsOf(ledger: 'stock' | 'credit', account: string): number {
    let units = 0;
    for (const amount of this.table(ledger).get(account)?.values() ?? []) units += amount;
    return units;
  }

  table(ledger: 'stock' | 'credit' | 'money'): Table {
    if (ledger === 'stock') return this.#stock;
    if (ledger === 'credit') return this.#credit;
    return new Map(
      [...this.#money].map(([account, minor]) => [account, new Map([[MONEY, minor]])]),
    );
  }

  /** Units by product in one account, zeros left out, in the order of product ids. */
  linesOf(ledger: 'stock' | 'credit', account: string): Record<string, number> {
    return withoutZeros(this.table(ledger).get(account) ?? new Map());
  }

  /** Plain data in a fixed order: equal balances give equal texts. */
  toAccounts(): BalancesByAccount {
    return {
      stock: byProduct(this.#stock),
      money: withoutZeros(this.#money),
      credit: byProduct(this.#credit),
    };
  }
}

function add(
  table: Map<string, Map<string, number>>,
  account: string,
  product: string,
  units: number,
): void {
  const lines = table.get(account);
  if (lines === undefined) table.set(account, new Map([[product, units]]));
  else lines.set(product, (lines.get(product) ?? 0) + units);
}

function withoutZeros(amounts: ReadonlyMap<string, number>): Record<string, number> {
  const kept: Record<string, number> = {};
  for (const [name, amount] of sortedEntries(amounts)) if (amount !== 0) kept[name] = amount;
  return kept;
}

/** A large book has thousands of accounts, so they are put in order once for all products. */
function byProduct(table: Table): Record<string, Record<string, number>> {
  const turned = new Map<string, Record<string, number>>();
  for (const [account, lines] of sortedEntries(table)) {
    for (const [product, units] of lines) {
      if (units === 0) continue;
      const accounts = turned.get(product) ?? {};
      accounts[account] = units;
      turned.set(product, accounts);
    }
  }
  return Object.fromEntries(sortedEntries(turned));
}
