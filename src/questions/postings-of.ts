import type { Ledger } from '../ledger/ledger.ts';
import type { MovementRecord } from '../records/record.ts';

/** Which of the three ledgers an account belongs to. */
export type LedgerName = 'stock' | 'money' | 'credit';

/** One move of a record: whole units of a product, or minor units, from one account to another. */
export interface Posting {
  readonly ledger: LedgerName;
  /** Undefined for money. */
  readonly product?: string;
  /** Never negative: a negative move is told the other way round. */
  readonly amount: number;
  readonly from: string;
  readonly to: string;
}

/** What a movement moves, at the prices of its own day; empty for one that moves nothing. */
export function postingsOf(ledger: Ledger, movement: MovementRecord): Posting[] {
  const postings: Posting[] = [];
  const noting =
    (name: LedgerName) =>
    (amount: number, from: string, to: string, product?: string): void => {
      if (amount === 0) return;
      const named = product === undefined ? {} : { product };
      const way = amount > 0 ? { from, to } : { from: to, to: from };
      postings.push({ ledger: name, ...named, amount: Math.abs(amount), ...way });
    };
  const [stock, money, credit] = [noting('stock'), noting('money'), noting('credit')];
  ledger.postingsTo(movement, {
    stock: (product, units, from, to) => stock(units, from, to, product),
    money: (minor, from, to) => money(minor, from, to),
    credit: (product, units, from, to) => credit(units, from, to, product),
  });
  return postings;
}
