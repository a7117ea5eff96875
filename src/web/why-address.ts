import type { Setup } from '../ledger/setup.ts';
import type { ClosingItem } from '../questions/closing/closing-item.ts';

/** Where "Why?" leads: the page that explains a difference, about one or more places. */
export function whyAddress(places: readonly string[]): string {
  return `/why?${new URLSearchParams(places.map((place) => ['about', place]))}`;
}

/** A count that does not agree, with its figures. */
export function whyCount(count: string): string {
  return `/why?count=${count}`;
}

/** A stall whose money is not what it sold for. */
export function whyStall(stall: string): string {
  return `/why?about=stall:${stall}&stall:${stall}=0`;
}

/** All sellers of a family. */
export function whyFamily(setup: Setup, family: string): string {
  const sellers = [...setup.sellers.values()].filter((seller) => seller.family === family);
  return whyAddress(sellers.map(({ seller }) => `seller:${seller}`));
}

/** The place that an account is looked at in; undefined where nobody can look. */
export function seenPlaceOf(ledger: string, account: string): string | undefined {
  if (ledger === 'money') {
    if (account.startsWith('owed:')) return `seller:${account.slice('owed:'.length)}`;
    return /^(?:cashbox|bank|cards|supplier)$/.test(account) ? account : undefined;
  }
  const isSeen = ledger === 'stock' && /^(?:stockroom$|seller:|neighbour:)/.test(account);
  return isSeen ? account : undefined;
}

/** Items of the closing list that are open because of something that does not agree. */
export function whyItem(item: ClosingItem): string | undefined {
  switch (item.cause?.kind) {
    case 'count_differs':
      return whyCount(item.records.at(-1) ?? '');
    case 'account_too_low':
      return whyAddress(['bank']);
    case 'settled_twice':
      return whyStall(item.item.slice('stall:'.length));
    case 'more_out_than_in':
      return whyAddress(['stockroom']);
    case 'family_in_credit':
    case 'sibling_the_other_way':
      return whyAddress([`seller:${item.item.slice('owed:'.length)}`]);
    case 'banked_too_much':
      return whyAddress([item.item === 'cards' ? 'cards' : 'cashbox']);
    case 'debit_not_as_announced':
    case 'supplier_took_too_much':
      return whyAddress(['supplier']);
    default:
      return undefined;
  }
}
