import type { LedgerName } from '../postings-of.ts';

/** One balance: an account of a ledger, and for goods one product of it. */
export interface Place {
  readonly ledger: LedgerName;
  readonly account: string;
  /** Empty for money. */
  readonly product: string;
}

/** Numbers for balances, so that effects on them are short lists of numbers. */
export class Places {
  readonly #numbers = {
    stock: new Map<string, Map<string, number>>(),
    money: new Map<string, Map<string, number>>(),
    credit: new Map<string, Map<string, number>>(),
  };
  readonly #places: Place[] = [];
  /** The last words of account names: sellers, neighbours, stalls. */
  readonly #parties = new Set<string>();
  readonly #isOpen: boolean;

  /** @param isOpen true to number every balance that is asked for; false for those added alone */
  constructor(isOpen: boolean) {
    this.#isOpen = isOpen;
  }

  get size(): number {
    return this.#places.length;
  }

  add(ledger: LedgerName, account: string, product: string): number {
    const byProduct = this.#numbers[ledger].get(account) ?? new Map<string, number>();
    this.#numbers[ledger].set(account, byProduct);
    this.#parties.add(account.slice(account.lastIndexOf(':') + 1));
    const known = byProduct.get(product);
    if (known !== undefined) return known;
    const number = this.#places.length;
    byProduct.set(product, number);
    this.#places.push({ ledger, account, product });
    return number;
  }

  /** True where an account of a seller, a neighbour or a stall may have a number. */
  hasPartOf(party: string): boolean {
    return this.#isOpen || this.#parties.has(party);
  }

  /** Undefined for a balance that nobody looked at. */
  numberOf(ledger: LedgerName, account: string, product: string): number | undefined {
    const known = this.#numbers[ledger].get(account)?.get(product);
    if (known !== undefined || !this.#isOpen) return known;
    return this.add(ledger, account, product);
  }

  at(number: number): Place {
    return this.#places[number] ?? { ledger: 'money', account: '', product: '' };
  }
}
