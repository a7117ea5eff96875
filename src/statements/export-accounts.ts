import { minorDigits } from '../base/currency.ts';
import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Mover } from '../ledger/posting.ts';
import type { Header } from '../records/header.ts';
import type { MovementRecord } from '../records/record.ts';
import { decimalText } from './decimal-text.ts';

/**
 * A book as a plain-text double-entry journal that independent ledgers read (hledger, ledger): one
 * transaction a record that counts, in the order of days; accounts are named as in `balances` under
 * `stock:`, `money:` and `credit:`, so the three ledgers cannot mix. Commodities are product ids,
 * `cr.` and the product id for credit, and the currency's code. The balances of every account equal
 * the book's own: a new price's revaluation of the stockroom is a transaction on its first day.
 *
 * Comes in pieces of some tens of thousands of characters, so that a large book is never one
 * string.
 */
export function* exportAccounts(header: Header, ledger: Ledger): Generator<string> {
  const journal = new JournalText(ledger.setup.season?.currency ?? 'XXX');
  journal.comment(`${header.book}, group ${header.group}, season ${header.season}`);
  const revaluations = revaluationsOf(ledger);
  let next = 0;
  for (const movement of ledger.movements()) {
    while (next < revaluations.length && (revaluations[next]?.day ?? '') <= movement.date) {
      journal.revalue(revaluations[next]);
      next += 1;
    }
    journal.post(ledger, movement);
    if (journal.length >= PIECE) yield journal.take();
  }
  for (const revaluation of revaluations.slice(next)) journal.revalue(revaluation);
  yield journal.take();
}

const PIECE = 60_000;

interface Revaluation {
  readonly day: string;
  readonly product: string;
  /** Minor units a unit, up or down. */
  readonly rise: number;
}

/** Every price after a product's first one, in the order of their first days. */
function revaluationsOf(ledger: Ledger): Revaluation[] {
  const found: Revaluation[] = [];
  for (const [product, steps] of ledger.prices) {
    steps.forEach((step, index) => {
      const before = steps[index - 1];
      if (before === undefined) return;
      found.push({ day: step.from, product, rise: step.price - before.price });
    });
  }
  return found.sort((a, b) => byText(a.day, b.day) || byText(a.product, b.product));
}

/** Writes transactions, and keeps the units on the shelf that a new price revalues. */
class JournalText implements Mover {
  readonly #currency: string;
  readonly #digits: number;
  readonly #shelf = new Map<string, number>();
  #text = '';
  #hasPostings = false;

  constructor(currency: string) {
    this.#currency = currency;
    this.#digits = minorDigits(currency);
  }

  get length(): number {
    return this.#text.length;
  }

  take(): string {
    const text = this.#text;
    this.#text = '';
    return text;
  }

  comment(text: string): void {
    this.#text += `; ${text}\n`;
  }

  /**
   * A record that moves nothing is a comment: not every ledger takes a transaction without lines.
   */
  post(ledger: Ledger, movement: MovementRecord): void {
    const head = `${movement.date} (${movement.id}) ${movement.kind}\n`;
    const before = this.#text;
    this.#text += `\n${head}`;
    this.#hasPostings = false;
    ledger.postingsTo(movement, this);
    if (!this.#hasPostings) this.#text = `${before}\n; ${head}`;
  }

  revalue(revaluation: Revaluation | undefined): void {
    if (revaluation === undefined) return;
    const { day, product, rise } = revaluation;
    const worth = (this.#shelf.get(product) ?? 0) * rise;
    if (worth === 0) return;
    this.#text += `\n${day} new price of ${product}\n`;
    this.money(worth, 'losses', 'goods');
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#move('stock', from, to, units, String(-units), String(units), `"${product}"`);
    if (to === 'stockroom') this.#onShelf(product, units);
    if (from === 'stockroom') this.#onShelf(product, -units);
  }

  money(minor: number, from: string, to: string): void {
    const amount = decimalText(minor, this.#digits);
    this.#move('money', from, to, minor, decimalText(-minor, this.#digits), amount, this.#currency);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#move('credit', from, to, units, String(-units), String(units), `"cr.${product}"`);
  }

  #onShelf(product: string, units: number): void {
    this.#shelf.set(product, (this.#shelf.get(product) ?? 0) + units);
  }

  #move(
    name: string,
    from: string,
    to: string,
    amount: number,
    taken: string,
    given: string,
    commodity: string,
  ): void {
    if (amount === 0) return;
    this.#hasPostings = true;
    this.#text +=
      `  ${name}:${from}  ${taken} ${commodity}\n` + `  ${name}:${to}  ${given} ${commodity}\n`;
  }
}
