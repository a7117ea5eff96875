import { sortedEntries } from '../../base/order.ts';
import type { Balances } from '../../ledger/balances.ts';
import type { Setup } from '../../ledger/setup.ts';
import type { BalancedBook } from '../../rules/quick-sums.ts';
import { accountName } from '../../statements/account-name.ts';
import { english } from '../../words/english.ts';
import { textTable } from './text-table.ts';

/** What every account holds, in tables for people. */
export function balancesText({ setup, balances }: BalancedBook): string {
  const currency = setup.season?.currency ?? '';
  const { money } = balances.toAccounts();
  const moneyRows = Object.entries(money).map(([account, minor]) => [
    account,
    english.money(minor, currency),
    accountName({ setup }, 'money', account, english),
  ]);
  return [
    `Stock, units\n${goodsTable(setup, balances, 'stock')}`,
    `Money\n${textTable(['account', 'amount', 'is'], moneyRows, new Set([1]))}`,
    `Credit, units\n${goodsTable(setup, balances, 'credit')}`,
  ].join('\n');
}

/** A row for each account and product that holds something, and each account in words. */
function goodsTable(setup: Setup, found: Balances, which: 'stock' | 'credit'): string {
  const rows: string[][] = [];
  for (const [account] of sortedEntries(found.table(which))) {
    const name = accountName({ setup }, which, account, english);
    for (const [product, units] of Object.entries(found.linesOf(which, account))) {
      rows.push([account, product, english.units(units), name]);
    }
  }
  return textTable(['account', 'product', 'units', 'is'], rows, new Set([2]));
}
