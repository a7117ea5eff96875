import { byText } from '../../base/order.ts';
import type { Balances } from '../../ledger/balances.ts';
import type { LedgerName } from '../postings-of.ts';
import { differencesIn, type ObservedAccount } from './observation.ts';

/** One amount in two states: whole units of a product, or minor units under the product ''. */
export interface AmountApart {
  readonly ledger: LedgerName;
  readonly account: string;
  readonly product: string;
  readonly before: number;
  readonly after: number;
}

/** What differs between the book (`before`) and what was seen (`after`); products never netted. */
export function seenAgainstBook(
  observed: readonly ObservedAccount[],
  balances: Balances,
): AmountApart[] {
  return observed.flatMap((each) => {
    const { ledger, account } = each;
    return [...differencesIn(each, balances)].flatMap(([product, off]) => {
      const before = amountOf(balances, ledger, account, product);
      return off === 0 ? [] : [{ ledger, account, product, before, after: before + off }];
    });
  });
}

/** Every amount that differs between two states of a book, product by product. */
export function amountsApart(before: Balances, after: Balances): AmountApart[] {
  const apart: AmountApart[] = [];
  for (const ledger of ['stock', 'money', 'credit'] as const) {
    const [was, is] = [before.table(ledger), after.table(ledger)];
    for (const account of [...new Set([...was.keys(), ...is.keys()])].sort(byText)) {
      const goods = [...(was.get(account)?.keys() ?? []), ...(is.get(account)?.keys() ?? [])];
      const products = new Set(ledger === 'money' ? [''] : goods);
      for (const product of [...products].sort(byText)) {
        const [then, now] = [before, after].map((b) => amountOf(b, ledger, account, product));
        if (then === undefined || now === undefined || then === now) continue;
        apart.push({ ledger, account, product, before: then, after: now });
      }
    }
  }
  return apart;
}

function amountOf(
  balances: Balances,
  ledger: LedgerName,
  account: string,
  product: string,
): number {
  switch (ledger) {
    case 'money':
      return balances.moneyOf(account);
    case 'stock':
      return balances.stockOf(account, product);
    case 'credit':
      return balances.creditOf(account, product);
  }
}
