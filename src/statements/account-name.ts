import type { Ledger } from '../ledger/ledger.ts';
import type { Setup } from '../ledger/setup.ts';
import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';

/** Names of things and places as people know them; an id that the set-up lacks is its own name. */

export function sellerName(setup: Setup, seller: string): string {
  return setup.sellers.get(seller)?.name ?? seller;
}

export function productName(setup: Setup, product: string): string {
  return setup.products.get(product)?.name ?? product;
}

export function hostName(setup: Setup, host: string): string {
  return setup.hosts.get(host)?.name ?? host;
}

/** A stall by its host shop and day: `Market hall, 6 Mar 2027`. */
export function stallName(setup: Setup, stall: string, say: Say): string {
  const record = setup.stalls.get(stall);
  if (record === undefined) return stall;
  return say`${hostName(setup, record.host)}, ${say.day(record.starts.slice(0, 10))}`;
}

const fixedNames = onceEach(
  (say): Readonly<Record<string, string>> => ({
    'stock:supplier': say`Supplier`,
    'stock:stockroom': say`Stockroom`,
    'stock:stall-sold': say`Sold at stalls`,
    'stock:gifted': say`Given away`,
    'stock:lost': say`Lost or damaged`,
    'money:goods': say`Goods in the stockroom, at price`,
    'money:cashbox': say`Cash box`,
    'money:cards': say`Card takings on the way`,
    'money:bank': say`Bank`,
    'money:supplier': say`Supplier account`,
    'money:buyers': say`Buyers who paid online`,
    'money:overshort': say`Short and over at stalls`,
    'money:fees': say`Fees`,
    'money:losses': say`Losses`,
    'money:proceeds': say`Proceeds`,
    'credit:issued': say`Credit given out`,
    'credit:pool:post': say`Posted orders, not yet shared`,
    'credit:pool:gift': say`Gift units, not yet shared`,
  }),
);

/** An account of one of the three ledgers in words, like `Ada L.: goods`. */
export function accountName(
  { setup }: Pick<Ledger, 'setup'>,
  which: 'stock' | 'money' | 'credit',
  account: string,
  say: Say,
): string {
  const fixed = fixedNames(say)[`${which}:${account}`];
  if (fixed !== undefined) return fixed;
  const cut = account.indexOf(':');
  const id = account.slice(cut + 1);
  switch (account.slice(0, cut)) {
    case 'seller':
      return which === 'credit' ? say`${sellerName(setup, id)}, credit` : sellerName(setup, id);
    case 'owed':
      return say`${sellerName(setup, id)}, still to pay`;
    case 'neighbour':
      return setup.neighbours.get(id)?.name ?? id;
    case 'pool':
      return say`${stallName(setup, id.slice(id.indexOf(':') + 1), say)}, not yet shared`;
    default:
      return account;
  }
}
