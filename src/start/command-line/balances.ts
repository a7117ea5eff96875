import { sortedEntries } from '../../base/order.ts';
import type { Balances } from '../../ledger/balances.ts';
import type { Setup } from '../../ledger/setup.ts';
import { accountName } from '../../statements/account-name.ts';
import { english } from '../../words/english.ts';
import type { Command } from './command.ts';
import { BOOK_HELP, bookOptions, openBalances } from './open-book.ts';
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
    const book = await openBalances(given, outlet);
    const found = asOf === undefined ? book.balances : book.asOf(asOf);
    if (given.has('json')) await writeJson(outlet, found.toAccounts());
    else await outlet.write(balancesText(book.setup, found));
    return 0;
  },
};

function balancesText(setup: Setup, found: Balances): string {
  const currency = setup.season?.currency ?? '';
  const { money } = found.toAccounts();
  const moneyRows = Object.entries(money).map(([account, minor]) => [
    account,
    english.money(minor, currency),
    accountName({ setup }, 'money', account, english),
  ]);
  return [
    `Stock, units\n${goodsTable(setup, found, 'stock')}`,
    `Money\n${textTable(['account', 'amount', 'is'], moneyRows, new Set([1]))}`,
    `Credit, units\n${goodsTable(setup, found, 'credit')}`,
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
