import { byText } from '../../base/order.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Balances } from '../../ledger/balances.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { unitsOf } from '../../records/units-of.ts';
import type { LedgerName } from '../postings-of.ts';

/** What somebody saw in one account; an account that is not here was not looked at. */
export interface ObservedAccount {
  readonly ledger: LedgerName;
  readonly account: string;
  /**
   * Goods: whole units by product, a product that is not here is 0. Money: minor units under ''.
   */
  readonly amounts: ReadonlyMap<string, number>;
}

/** Balances by `ledger:account`: minor units for money, units by product for stock and credit. */
export type ByAccount = Readonly<Record<string, number | Readonly<Record<string, number>>>>;

/**
 * Reads observed balances, `{"stock:stockroom":{"honey":12},"money:owed:ada":4500}`.
 * The refusal is one sentence: where, what was said, what is wanted.
 */
export function readObservation(
  ledger: Ledger,
  said: unknown,
): Outcome<readonly ObservedAccount[], string> {
  if (!isObject(said)) return refused(`observed: said ${told(said)}, wanted ${SHAPE}`);
  const entries = Object.entries(said);
  if (entries.length === 0) return refused(`observed: names no account, wanted ${SHAPE}`);
  const observed: ObservedAccount[] = [];
  for (const [name, amount] of entries) {
    const read = readAccount(ledger, name, amount);
    if (!read.ok) return read;
    observed.push(read.value);
  }
  return done(observed.sort((a, b) => byText(nameOf(a), nameOf(b))));
}

/** Observed less book, in the shape in which it was observed; accounts that agree are left out. */
export function differenceOf(
  observed: readonly ObservedAccount[],
  balances: Balances,
): Record<string, number | Record<string, number>> {
  const difference: Record<string, number | Record<string, number>> = {};
  for (const each of observed) {
    const off = [...differencesIn(each, balances)].filter(([, amount]) => amount !== 0);
    if (off.length === 0) continue;
    const name = `${each.ledger}:${each.account}`;
    difference[name] = each.ledger === 'money' ? (off[0]?.[1] ?? 0) : Object.fromEntries(off);
  }
  return difference;
}

/** Observed less book for every product that either has, in the order of ids. */
export function differencesIn(
  { ledger, account, amounts }: ObservedAccount,
  balances: Balances,
): Map<string, number> {
  if (ledger === 'money')
    return new Map([['', (amounts.get('') ?? 0) - balances.moneyOf(account)]]);
  const book = balances.linesOf(ledger, account);
  const products = [...new Set([...amounts.keys(), ...Object.keys(book)])].sort(byText);
  return new Map(
    products.map((product) => [product, (amounts.get(product) ?? 0) - unitsOf(book, product)]),
  );
}

const SHAPE = 'balances by account, like {"stock:stockroom":{"honey":12},"money:bank":45000}';

function readAccount(
  ledger: Ledger,
  name: string,
  amount: unknown,
): Outcome<ObservedAccount, string> {
  const cut = name.indexOf(':');
  const which = LEDGERS.find((each) => each === name.slice(0, cut));
  const account = name.slice(cut + 1);
  if (which === undefined || !isAccount(ledger, which, account)) {
    return refused(`observed: said "${name}", wanted ${wantedAccount(which)}`);
  }
  if (which === 'money') {
    if (!isWhole(amount)) return refused(`${name}: said ${told(amount)}, wanted ${MINOR}`);
    return done({ ledger: which, account, amounts: new Map([['', amount]]) });
  }
  if (!isObject(amount)) return refused(`${name}: said ${told(amount)}, wanted ${UNITS}`);
  const amounts = new Map<string, number>();
  for (const [product, units] of Object.entries(amount)) {
    if (!ledger.prices.has(product)) {
      return refused(`${name}: said "${product}", wanted the id of a product of this book`);
    }
    if (!isWhole(units)) {
      return refused(`${name}.${product}: said ${told(units)}, wanted a whole number of units`);
    }
    amounts.set(product, units);
  }
  return done({ ledger: which, account, amounts });
}

const LEDGERS: readonly LedgerName[] = ['stock', 'money', 'credit'];
const MINOR = 'a whole number of minor units (cents)';
const UNITS = 'whole units by product, like {"honey":12}';

const FIXED: Readonly<Record<LedgerName, readonly string[]>> = {
  stock: ['supplier', 'stockroom', 'stall-sold', 'gifted', 'lost'],
  money: [
    'goods',
    'cashbox',
    'cards',
    'bank',
    'supplier',
    'buyers',
    'overshort',
    'fees',
    'losses',
    'proceeds',
  ],
  credit: ['issued', 'pool:post', 'pool:gift'],
};

/** An account that the posting rules know, of somebody or a stall that the book knows. */
function isAccount(ledger: Ledger, which: LedgerName, account: string): boolean {
  if (FIXED[which].includes(account) || ledger.balances.table(which).has(account)) return true;
  const { sellers, neighbours, stalls } = ledger.setup;
  const cut = account.lastIndexOf(':');
  const id = account.slice(cut + 1);
  const family = `${which}:${account.slice(0, cut)}`;
  if (family === 'money:owed') return sellers.has(id);
  if (family === 'stock:seller' || family === 'credit:seller') return sellers.has(id);
  if (family === 'stock:neighbour') return neighbours.has(id);
  return family === 'credit:pool:stall' && stalls.has(id);
}

function wantedAccount(which: LedgerName | undefined): string {
  switch (which) {
    case undefined:
      return 'an account that begins with stock:, money: or credit:';
    case 'stock':
      return 'stock: with stockroom, supplier, stall-sold, gifted, lost, seller:ID or neighbour:ID';
    case 'money':
      return `money: with owed:ID of a seller, or ${FIXED.money.join(', ')}`;
    case 'credit':
      return 'credit: with issued, seller:ID, pool:post, pool:gift or pool:stall:ID';
  }
}

function nameOf(each: ObservedAccount): string {
  return `${each.ledger}:${each.account}`;
}

function isObject(said: unknown): said is Readonly<Record<string, unknown>> {
  return typeof said === 'object' && said !== null && !Array.isArray(said);
}

function isWhole(said: unknown): said is number {
  return Number.isSafeInteger(said);
}

function told(said: unknown): string {
  return said === undefined ? 'nothing' : JSON.stringify(said).slice(0, 60);
}
