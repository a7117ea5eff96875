import type { Ledger } from '../ledger/ledger.ts';
import type { MovementRecord } from '../records/record.ts';
import { unitsOf } from '../records/units-of.ts';
import { type LedgerName, type Posting, postingsOf } from './postings-of.ts';

/** A change of one or more accounts by one record, and where they stand after it. */
export interface RunningLine {
  readonly date: string;
  /** The movement, or the product record whose new price revalues the stockroom. */
  readonly record: string;
  readonly cause: 'movement' | 'new-price';
  /** Units of all products together, or minor units; positive comes in. */
  readonly amount: number;
  /** Units by product behind `amount`; empty for money. */
  readonly lines: Readonly<Record<string, number>>;
  /** Balance after the line, in the order of the list. */
  readonly balance: number;
}

export interface RunningBalance {
  /** By the day it happened, a new price first, then by when it was written. */
  readonly lines: readonly RunningLine[];
  /** The last line's balance: the same as the ledger's own. */
  readonly balance: number;
}

/** Which accounts of one ledger to follow, and which product; without it all of them together. */
export interface Following {
  readonly ledger: LedgerName;
  readonly accounts: (account: string) => boolean;
  readonly product?: string | undefined;
}

/**
 * The running list of any account, or of several as if they were one: every record that changed it,
 * with the balance after. Moves between two accounts that are both followed change nothing.
 */
export function runningBalance(ledger: Ledger, following: Following): RunningBalance {
  const changes: Omit<RunningLine, 'balance'>[] = [];
  const news = following.ledger === 'money' ? revaluations(ledger, following) : [];
  let next = 0;
  for (const movement of ledger.movements()) {
    for (let change = news[next]; change && change.date <= movement.date; change = news[next]) {
      changes.push(change);
      next += 1;
    }
    const change = changeBy(movement, postingsOf(ledger, movement), following);
    if (change !== undefined) changes.push(change);
  }
  changes.push(...news.slice(next));
  let balance = 0;
  const lines = changes.map((change) => {
    balance += change.amount;
    return { ...change, balance };
  });
  return { lines, balance };
}

function changeBy(
  movement: MovementRecord,
  postings: readonly Posting[],
  following: Following,
): Omit<RunningLine, 'balance'> | undefined {
  const lines: Record<string, number> = {};
  let amount = 0;
  let touched = false;
  for (const posting of postings) {
    const units = signedAmount(posting, following);
    if (units === 0) continue;
    amount += units;
    if (posting.product !== undefined) {
      lines[posting.product] = unitsOf(lines, posting.product) + units;
    }
    touched = true;
  }
  // A swap of one product for another adds up to nothing and is a line all the same.
  const changes = amount !== 0 || Object.values(lines).some((units) => units !== 0);
  if (!touched || !changes) return undefined;
  return { date: movement.date, record: movement.id, cause: 'movement', amount, lines };
}

function signedAmount(posting: Posting, following: Following): number {
  if (posting.ledger !== following.ledger) return 0;
  if (following.product !== undefined && posting.product !== following.product) return 0;
  const comes = following.accounts(posting.to) ? posting.amount : 0;
  const goes = following.accounts(posting.from) ? posting.amount : 0;
  return comes - goes;
}

/** Revaluations of the stockroom on the first day of each new price, `goods` against `losses`. */
function revaluations(ledger: Ledger, following: Following): Omit<RunningLine, 'balance'>[] {
  const sign = Number(following.accounts('goods')) - Number(following.accounts('losses'));
  if (sign === 0) return [];
  const changes: Omit<RunningLine, 'balance'>[] = [];
  for (const [product, steps] of ledger.prices) {
    for (const [place, step] of steps.entries()) {
      const before = steps[place - 1];
      if (before === undefined || before.price === step.price) continue;
      const rise = step.price - before.price;
      const amount = sign * rise * unitsBefore(ledger, product, step.from);
      if (amount === 0) continue;
      changes.push({ date: step.from, record: step.record, cause: 'new-price', amount, lines: {} });
    }
  }
  return changes.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** Units in the stockroom as the day begins. */
function unitsBefore(ledger: Ledger, product: string, day: string): number {
  const stockroom: Following = {
    ledger: 'stock',
    accounts: (account) => account === 'stockroom',
    product,
  };
  let units = 0;
  for (const movement of ledger.movements()) {
    if (movement.date >= day) continue;
    for (const posting of postingsOf(ledger, movement)) units += signedAmount(posting, stockroom);
  }
  return units;
}
