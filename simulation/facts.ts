import type { BalancesByAccount } from '../src/ledger/balances.ts';
import type { Ledger } from '../src/ledger/ledger.ts';

/**
 * The facts that hold in every book (book specification, section 4). Each answers the first thing
 * that breaks it, or undefined where it holds, so that a test can say what broke.
 */

/** In every ledger each product, and money, adds up to zero. */
export function whatDoesNotSumToZero(balances: BalancesByAccount): string | undefined {
  const sums: [string, Readonly<Record<string, number>>][] = [
    ['money', balances.money],
    ...Object.entries(balances.stock).map(named('stock')),
    ...Object.entries(balances.credit).map(named('credit')),
  ];
  const broken = sums.find(([, accounts]) => sumOf(accounts) !== 0);
  return broken === undefined ? undefined : `${broken[0]} sums to ${sumOf(broken[1])}`;
}

/** Money `goods` is the stockroom's units at the prices that hold. */
export function whatGoodsIsOffBy(
  balances: BalancesByAccount,
  price: (product: string) => number,
): string | undefined {
  let worth = 0;
  for (const [product, accounts] of Object.entries(balances.stock)) {
    worth += (accounts.stockroom ?? 0) * price(product);
  }
  const goods = balances.money.goods ?? 0;
  return goods === worth ? undefined : `goods is ${goods}, the stockroom is worth ${worth}`;
}

/** What was issued is what the pools and the sellers have, product by product. */
export function whatCreditIsMissing(balances: BalancesByAccount): string | undefined {
  for (const [product, accounts] of Object.entries(balances.credit)) {
    const held = Object.entries(accounts).filter(([account]) => /^(pool|seller):/.test(account));
    const units = sumOf(Object.fromEntries(held));
    const issued = -(accounts.issued ?? 0);
    if (units !== issued) return `${product}: issued ${issued}, held ${units}`;
  }
  return undefined;
}

/** The first of the facts that a ledger breaks, on a day or at the end. */
export function brokenFact(ledger: Ledger, day?: string): string | undefined {
  const balances = (day === undefined ? ledger.balances : ledger.asOf(day)).toAccounts();
  return (
    whatDoesNotSumToZero(balances) ??
    whatGoodsIsOffBy(balances, (product) => ledger.priceOn(product, day)) ??
    whatCreditIsMissing(balances)
  );
}

function named(ledger: string) {
  return ([product, accounts]: [string, Readonly<Record<string, number>>]): [
    string,
    Readonly<Record<string, number>>,
  ] => [`${ledger} ${product}`, accounts];
}

function sumOf(accounts: Readonly<Record<string, number>>): number {
  return Object.values(accounts).reduce((sum, amount) => sum + amount, 0);
}
