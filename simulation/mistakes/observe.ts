import { sortedEntries } from '../../src/base/order.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import type { ByAccount } from '../../src/questions/explain/observation.ts';

/** How much somebody looked at. */
export type Level = 'count' | 'concerned' | 'everything';

export const levels: readonly Level[] = ['count', 'concerned', 'everything'];

/**
 * What the true book shows, at three levels: the stockroom alone; the stockroom and whoever the
 * mistake concerns (families, neighbours, supplier, bank), each wholly; every account.
 */
export function observationOf(truth: Ledger, book: Ledger, level: Level): ByAccount {
  const seen: Record<string, number | Record<string, number>> = {};
  const look = (name: string): void => {
    const cut = name.indexOf(':');
    const account = name.slice(cut + 1);
    const which = name.slice(0, cut);
    if (which === 'money') seen[name] = truth.balances.moneyOf(account);
    else seen[name] = truth.balances.linesOf(which === 'stock' ? 'stock' : 'credit', account);
  };
  look('stock:stockroom');
  if (level === 'count') return seen;
  const all = new Set([...accountsOf(truth), ...accountsOf(book)]);
  if (level === 'everything') for (const name of all) look(name);
  else {
    for (const name of all) {
      if (isOutside(name) && differs(truth, book, name)) {
        for (const each of wholeParty(name)) look(each);
      }
    }
  }
  return seen;
}

function accountsOf(ledger: Ledger): string[] {
  return (['stock', 'money', 'credit'] as const).flatMap((which) =>
    sortedEntries(ledger.balances.table(which)).map(([account]) => `${which}:${account}`),
  );
}

/** Accounts that somebody outside the book can tell: families, neighbours, supplier, bank. */
function isOutside(name: string): boolean {
  return /^(?:stock:(?:seller|neighbour):|money:(?:owed:|bank|cashbox|cards|supplier))/.test(name);
}

function differs(truth: Ledger, book: Ledger, name: string): boolean {
  const [which = '', ...rest] = name.split(':');
  const account = rest.join(':');
  if (which === 'money') return truth.balances.moneyOf(account) !== book.balances.moneyOf(account);
  const ledger = which === 'stock' ? 'stock' : 'credit';
  const [a, b] = [truth, book].map((each) =>
    JSON.stringify(each.balances.linesOf(ledger, account)),
  );
  return a !== b;
}

/** A family tells its goods, its money and its credit together. */
function wholeParty(name: string): string[] {
  const seller = /^(?:stock:seller|money:owed):(.*)$/.exec(name)?.[1];
  if (seller === undefined) return [name];
  return [`stock:seller:${seller}`, `money:owed:${seller}`, `credit:seller:${seller}`];
}
