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
  return inOrder((ledger) => {
    const accounts = new Set([...before.table(ledger).keys(), ...after.table(ledger).keys()]);
    return [...accounts].map((account) => ({
      account,
      before: total(before, ledger, account),
      after: total(after, ledger, account),
    }));
  });
}

/** Every account that differs once something more has moved, by ledger and account. */
export function balancesAfter(before: Balances, moves: Balances): ChangedBalance[] {
  return inOrder((ledger) =>
    [...moves.table(ledger).keys()].map((account) => {
      const was = total(before, ledger, account);
      return { account, before: was, after: was + total(moves, ledger, account) };
    }),
  );
}

function inOrder(
  accountsOf: (ledger: LedgerName) => readonly Omit<ChangedBalance, 'ledger'>[],
): ChangedBalance[] {
  return (['money', 'stock', 'credit'] as const).flatMap((ledger) =>
    accountsOf(ledger)
      .filter(({ before, after }) => before !== after)
      .sort((a, b) => byText(a.account, b.account))
      .map((change) => ({ ledger, ...change })),
  );
}

function total(balances: Balances, ledger: LedgerName, account: string): number {
  return ledger === 'money' ? balances.moneyOf(account) : balances.unitsOf(ledger, account);
}
