import { sortedEntries } from '../../base/order.ts';
import type { Balances } from '../../ledger/balances.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { accountName } from '../../statements/account-name.ts';
import { moneyText, unitsText } from '../../statements/money-text.ts';
import type { Command } from './command.ts';
import { BOOK_HELP, bookOptions, openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { textTable } from './text-table.ts';

export const balances: Command = {
  options: { ...bookOptions, 'as-of': { type: 'string' } },
  takes: ['BOOK'],
  help: `What every account holds: stock and credit in units, money in the season's currency.

  --as-of DAY   at the end of that day (YYYY-MM-DD), at its prices
  --json        {"stock":{product:{account:units}},"money":{account:minor},"credit":{…}}

${BOOK_HELP}

Examples
  cratebook balances spring.jsonl
  cratebook balances spring.jsonl --as-of 2027-03-01 --json`,
  run: async (given, outlet) => {
    const asOf = given.day('as-of');
    const { ledger } = await openBook(given, outlet);
    const found = asOf === undefined ? ledger.balances : ledger.asOf(asOf);
    if (given.has('json')) await writeJson(outlet, found.toAccounts());
    else await outlet.write(balancesText(ledger, found));
    return 0;
  },
};

function balancesText(ledger: Ledger, found: Balances): string {
  const currency = ledger.setup.season?.currency ?? '';
  const { money } = found.toAccounts();
  const moneyRows = Object.entries(money).map(([account, minor]) => [
    account,
    moneyText(minor, currency),
    accountName(ledger, 'money', account),
  ]);
  return [
    `Stock, units\n${goodsTable(ledger, found, 'stock')}`,
    `Money\n${textTable(['account', 'amount', 'is'], moneyRows, new Set([1]))}`,
    `Credit, units\n${goodsTable(ledger, found, 'credit')}`,
  ].join('\n');
}

/** A row for each account and product that holds something, and each account in words. */
function goodsTable(ledger: Ledger, found: Balances, which: 'stock' | 'credit'): string {
  const rows: string[][] = [];
  for (const [account] of sortedEntries(found.table(which))) {
    const name = accountName(ledger, which, account);
    for (const [product, units] of Object.entries(found.linesOf(which, account))) {
      rows.push([account, product, unitsText(units), name]);
    }
  }
  return textTable(['account', 'product', 'units', 'is'], rows, new Set([2]));
}
