import type { Balances } from '../../ledger/balances.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { Lines } from '../../records/fields.ts';
import { accountEntries } from '../account-entries.ts';
import { stallSettlement } from '../stall-settlement.ts';
import type { ObservedAccount } from './observation.ts';

/**
 * What people say they saw, as they say it: a family tells what it took and what it paid, nobody
 * tells the balance of an account. Here that becomes the accounts which `explain` compares.
 */
export interface Seen {
  /** A place of `placeKind`: `stockroom`, `bank`, `seller:ada`, `neighbour:hill`, `stall:quay`. */
  readonly place: string;
  /** Whole units of the products that somebody gave a figure for; all others are as in the book. */
  readonly units: Lines;
  /**
   * Minor units, where said. Of a seller: paid in all. Of a stall: what its money should be over,
   * mostly 0. Else the balance with the account's own sign: the bank overdrawn is negative, and so
   * is what is still to pay to the supplier.
   */
  readonly minor?: number;
}

/** What a place is made of, as far as somebody can look at it; undefined where there is none. */
export function placeKind(
  ledger: Ledger,
  place: string,
): 'goods' | 'money' | 'seller' | 'stall' | undefined {
  if (place === 'stockroom') return 'goods';
  if (MONEY_PLACES.has(place)) return 'money';
  const id = place.slice(place.indexOf(':') + 1);
  if (place.startsWith('seller:') && ledger.setup.sellers.has(id)) return 'seller';
  if (place.startsWith('neighbour:') && ledger.setup.neighbours.has(id)) return 'goods';
  if (place.startsWith('stall:') && ledger.setup.stalls.has(id)) return 'stall';
  return undefined;
}

/** What the book says of a place at the end of a day, in the terms of `Seen`. */
export function inBook(ledger: Ledger, place: string, day: string): Seen {
  const balances = ledger.asOf(day);
  const kind = placeKind(ledger, place);
  if (kind === 'money') return { place, units: {}, minor: balances.moneyOf(place) };
  if (kind === 'stall') return { place, units: {}, minor: overAt(ledger, place, day) };
  const units = balances.linesOf('stock', place);
  if (kind !== 'seller') return { place, units };
  return { place, units, minor: paidBy(ledger, place.slice('seller:'.length), day) };
}

/**
 * The accounts that were looked at, with what must be in them if all that was said is right. What
 * a seller owes follows from its goods and payments; where goods differ of which the price has
 * changed, it is left out, as nobody said at which price.
 */
export function observedIn(
  ledger: Ledger,
  seen: readonly Seen[],
  day: string,
): readonly ObservedAccount[] {
  const balances = ledger.asOf(day);
  return seen.flatMap((each) => observedAt(ledger, each, balances, day));
}

function observedAt(
  ledger: Ledger,
  seen: Seen,
  balances: Balances,
  day: string,
): ObservedAccount[] {
  switch (placeKind(ledger, seen.place)) {
    case 'goods':
      return [goodsOf(seen, balances)];
    case 'money':
      return seen.minor === undefined ? [] : [money(seen.place, seen.minor)];
    case 'stall':
      return [stallOf(ledger, seen, balances, day)];
    case 'seller':
      return [goodsOf(seen, balances), ...owedOf(ledger, seen, balances, day)];
    case undefined:
      return [];
  }
}

const MONEY_PLACES: ReadonlySet<string> = new Set(['cashbox', 'bank', 'cards', 'supplier']);

function goodsOf({ place, units }: Seen, balances: Balances): ObservedAccount {
  const amounts = { ...balances.linesOf('stock', place), ...units };
  return { ledger: 'stock', account: place, amounts: new Map(Object.entries(amounts)) };
}

/** The stalls that were asked about, by their ids. */
export function stallsIn(ledger: Ledger, seen: readonly Seen[]): string[] {
  const stalls = seen.filter(({ place }) => placeKind(ledger, place) === 'stall');
  return stalls.map(({ place }) => place.slice('stall:'.length));
}

/** All stalls' short and over as it would be with the right money at this one. */
function stallOf(ledger: Ledger, { place, minor }: Seen, balances: Balances, day: string) {
  const off = overAt(ledger, place, day) - (minor ?? 0);
  return money('overshort', balances.moneyOf('overshort') + off);
}

/** Minor units over at a stall up to a day; negative is short. */
function overAt(ledger: Ledger, place: string, day: string): number {
  const stall = place.slice('stall:'.length);
  let over = 0;
  for (const movement of ledger.movements()) {
    if (movement.kind !== 'stall-close' || movement.stall !== stall) continue;
    if (movement.date > day) continue;
    const { tally: _tally, ...counted } = movement;
    over += stallSettlement(ledger, counted).difference;
  }
  return over;
}

function owedOf(
  ledger: Ledger,
  { place, units, minor }: Seen,
  balances: Balances,
  day: string,
): ObservedAccount[] {
  const seller = place.slice('seller:'.length);
  const paid = paidBy(ledger, seller, day);
  let owed = balances.moneyOf(`owed:${seller}`) + paid - (minor ?? paid);
  for (const [product, said] of Object.entries(units)) {
    const off = said - balances.stockOf(place, product);
    if (off === 0) continue;
    const [price, ...others] = new Set(ledger.prices.get(product)?.map((step) => step.price));
    if (price === undefined || others.length > 0) return [];
    owed += off * price;
  }
  return [money(`owed:${seller}`, owed)];
}

function money(account: string, minor: number): ObservedAccount {
  return { ledger: 'money', account, amounts: new Map([['', minor]]) };
}

/** Minor units of all payments of a seller up to a day. */
function paidBy(ledger: Ledger, seller: string, day: string): number {
  let paid = 0;
  for (const movement of ledger.movements()) {
    if (movement.kind !== 'payment' || movement.date > day) continue;
    for (const entry of accountEntries(movement, ledger)) {
      if (entry.seller !== seller) continue;
      for (const { part, minor } of entry.parts) if (part === 'paid') paid += minor;
    }
  }
  return paid;
}
