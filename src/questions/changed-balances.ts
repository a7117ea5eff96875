import { byText } from '../base/order.ts';
import type { Balances } from '../ledger/balances.ts';
import type { LedgerName } from './postings-of.ts';

/** An account before and after: units of all products together, or minor units. */
export interface ChangedBalance {
  readonly ledger: LedgerName;
  readonly account: string;
  readonly before: number;
  readonly after: number;
}

/** Every account that differs between two states of a book, by ledger and account. */
export function changedBalances(before: Balances, after: Balances): ChangedBalance[] {
  const changed: ChangedBalance[] = [];
  for (const ledger of ['money', 'stock', 'credit'] as const) {
    const accounts = new Set([...before.table(ledger).keys(), ...after.table(ledger).keys()]);
    for (const account of [...accounts].sort(byText)) {
      const [was, is] = [total(before, ledger, account), total(after, ledger, account)];
      if (was !== is) changed.push({ ledger, account, before: was, after: is });
    }
  }
  return changed;
}

function total(balances: Balances, ledger: LedgerName, account: string): number {
  return ledger === 'money' ? balances.moneyOf(account) : balances.unitsOf(ledger, account);
}
