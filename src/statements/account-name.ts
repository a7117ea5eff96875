import type { Ledger } from '../ledger/ledger.ts';
import type { Setup } from '../ledger/setup.ts';
import { dayText } from './day-text.ts';

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
export function stallName(setup: Setup, stall: string): string {
  const record = setup.stalls.get(stall);
  if (record === undefined) return stall;
  return `${hostName(setup, record.host)}, ${dayText(record.starts.slice(0, 10))}`;
}

const FIXED: Readonly<Record<string, string>> = {
  'stock:supplier': 'Supplier',
  'stock:stockroom': 'Stockroom',
  'stock:stall-sold': 'Sold at stalls',
  'stock:gifted': 'Given away',
  'stock:lost': 'Lost or damaged',
  'money:goods': 'Goods in the stockroom, at price',
  'money:cashbox': 'Cash box',
  'money:cards': 'Card takings on the way',
  'money:bank': 'Bank',
  'money:supplier': 'Supplier account',
  'money:buyers': 'Buyers who paid online',
  'money:overshort': 'Short and over at stalls',
  'money:fees': 'Fees',
  'money:losses': 'Losses',
  'money:proceeds': 'Proceeds',
  'credit:issued': 'Credit given out',
  'credit:pool:post': 'Posted orders, not yet shared',
  'credit:pool:gift': 'Gift units, not yet shared',
};

/** An account of one of the three ledgers in words, like `Ada L.: goods`. */
export function accountName(
  { setup }: Pick<Ledger, 'setup'>,
  which: 'stock' | 'money' | 'credit',
  account: string,
): string {
  const fixed = FIXED[`${which}:${account}`];
  if (fixed !== undefined) return fixed;
  const cut = account.indexOf(':');
  const id = account.slice(cut + 1);
  switch (account.slice(0, cut)) {
    case 'seller':
      return `${sellerName(setup, id)}${which === 'credit' ? ', credit' : ''}`;
    case 'owed':
      return `${sellerName(setup, id)}, still to pay`;
    case 'neighbour':
      return setup.neighbours.get(id)?.name ?? id;
    case 'pool':
      return `${stallName(setup, id.slice(id.indexOf(':') + 1))}, not yet shared`;
    default:
      return account;
  }
}
