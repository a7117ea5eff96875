import { assert } from '../base/assert.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Balances } from '../ledger/balances.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { unitsOf } from '../records/units-of.ts';
import { type AccountEntry, accountEntries, type PartName, partSign } from './account-entries.ts';

/**
 * What a family has taken, brought back and paid, line by line, and what is still to pay. The sums
 * are made from the records themselves and then held against the ledger, which makes them another
 * way: a statement whose arithmetic does not give the ledger's balance is never handed out.
 */
export interface FamilyAccount {
  readonly family: string;
  /** The adult who answers for the account. */
  readonly name: string;
  /** BCP 47 tag of the language the family reads, where it said one. */
  readonly language?: string;
  /** The day up to which records count; undefined: all of them. */
  readonly asOf?: string;
  readonly lines: readonly AccountLine[];
  readonly totals: AccountTotals;
  /** Minor units: positive is still to pay, negative is in credit. */
  readonly stillToPay: number;
  /** Every seller of the family, active or not, in the order of their ids. */
  readonly sellers: readonly SellerAccount[];
  /** Id of the last line's record; undefined while there is none. */
  readonly lastRecord?: string;
}

export interface SellerAccount {
  readonly seller: string;
  /** First name and initial. */
  readonly name: string;
  readonly totals: AccountTotals;
  /** Minor units, as for the family. */
  readonly stillToPay: number;
  /** Units the seller took and did not bring back or pass on, by product. */
  readonly held: Units;
  /** Units of credit towards prizes, by product; never money. */
  readonly credit: Units;
}

export interface AccountLine extends AccountEntry {
  /** Minor units by which the line changed what is still to pay. */
  readonly minor: number;
  /** Minor units still to pay for the whole family after the line; negative: in credit. */
  readonly stillToPay: number;
}

/** Units and minor units of each part, never negative; `partSign` says which way a part counts. */
export type AccountTotals = Readonly<Record<PartName, PartTotal>>;

export interface PartTotal {
  readonly units: number;
  readonly minor: number;
}

type Units = Readonly<Record<string, number>>;

export type AccountRefusal =
  | { readonly name: 'no_such_family'; readonly family: string }
  /** Amounts beyond what can be added exactly: the records behind them need an edit first. */
  | { readonly name: 'sums_too_large' };

/** One family's account. */
export function familyAccount(
  ledger: Ledger,
  family: string,
  asOf?: string,
): Outcome<FamilyAccount, AccountRefusal> {
  if (!ledger.setup.families.has(family)) return refused({ name: 'no_such_family', family });
  const accounts = familyAccounts(ledger, asOf, [family]);
  if (!accounts.ok) return accounts;
  const account = accounts.value.get(family);
  assert(account !== undefined, 'every family that was asked for has an account');
  return done(account);
}

/** The accounts of all families (or of those named) by family id, from one reading of the book. */
export function familyAccounts(
  ledger: Ledger,
  asOf?: string,
  families: Iterable<string> = ledger.setup.families.keys(),
): Outcome<ReadonlyMap<string, FamilyAccount>, AccountRefusal> {
  if (!ledger.balances.exact) return refused({ name: 'sums_too_large' });
  const balances = asOf === undefined ? ledger.balances : ledger.asOf(asOf);
  const entries = entriesByFamily(ledger, asOf, new Set(families));
  const accounts = new Map<string, FamilyAccount>();
  for (const [family, ofFamily] of entries) {
    accounts.set(family, accountOf(family, ofFamily, balances, ledger, asOf));
  }
  return done(accounts);
}

function entriesByFamily(
  ledger: Ledger,
  asOf: string | undefined,
  families: ReadonlySet<string>,
): Map<string, AccountEntry[]> {
  const byFamily = new Map<string, AccountEntry[]>();
  for (const family of families) byFamily.set(family, []);
  for (const movement of ledger.movements()) {
    if (asOf !== undefined && movement.date > asOf) continue;
    for (const entry of accountEntries(movement, ledger)) {
      const family = ledger.setup.sellers.get(entry.seller)?.family ?? '';
      byFamily.get(family)?.push(entry);
    }
  }
  return byFamily;
}

function accountOf(
  family: string,
  entries: readonly AccountEntry[],
  balances: Balances,
  ledger: Ledger,
  asOf: string | undefined,
): FamilyAccount {
  const setup = ledger.setup.families.get(family);
  const lines = withRunningTotal(entries);
  const sellers = [...ledger.setup.sellers.values()]
    .filter((seller) => seller.family === family)
    .map((seller) => sellerAccount(seller.seller, seller.name, entries, balances));
  const stillToPay = lines.at(-1)?.stillToPay ?? 0;
  const bySeller = sellers.reduce((sum, seller) => sum + seller.stillToPay, 0);
  assert(stillToPay === bySeller, 'the running total of a family is what its sellers owe');
  const last = lines.at(-1);
  return {
    family,
    name: setup?.name ?? family,
    ...(setup?.language === undefined ? {} : { language: setup.language }),
    ...(asOf === undefined ? {} : { asOf }),
    lines,
    totals: totalsOf(entries),
    stillToPay,
    sellers,
    ...(last === undefined ? {} : { lastRecord: last.record }),
  };
}

function withRunningTotal(entries: readonly AccountEntry[]): AccountLine[] {
  let stillToPay = 0;
  return entries.map((entry) => {
    const minor = effectOf(entry);
    stillToPay += minor;
    return { ...entry, minor, stillToPay };
  });
}

function sellerAccount(
  seller: string,
  name: string,
  entries: readonly AccountEntry[],
  balances: Balances,
): SellerAccount {
  const own = entries.filter((entry) => entry.seller === seller);
  const stillToPay = own.reduce((sum, entry) => sum + effectOf(entry), 0);
  const held = balances.linesOf('stock', `seller:${seller}`);
  const credit = balances.linesOf('credit', `seller:${seller}`);
  assert(stillToPay === balances.moneyOf(`owed:${seller}`), 'lines give what the seller owes');
  assert(sameUnits(sumUnits(own, 'held'), held), 'lines give the units that the seller holds');
  assert(sameUnits(sumUnits(own, 'credited'), credit), 'lines give the credit of the seller');
  return { seller, name, totals: totalsOf(own), stillToPay, held, credit };
}

function effectOf(entry: AccountEntry): number {
  return entry.parts.reduce((sum, part) => sum + partSign[part.part] * part.minor, 0);
}

function totalsOf(entries: readonly AccountEntry[]): AccountTotals {
  const totals = emptyTotals();
  for (const entry of entries) {
    for (const { part, units, minor } of entry.parts) {
      const before = totals[part];
      totals[part] = { units: before.units + units, minor: before.minor + minor };
    }
  }
  return totals;
}

function emptyTotals(): Record<PartName, PartTotal> {
  const none: PartTotal = { units: 0, minor: 0 };
  return {
    taken: none,
    broughtBack: none,
    received: none,
    passedOn: none,
    posted: none,
    gifts: none,
    paid: none,
    paidOnline: none,
    refunded: none,
    bounced: none,
    bankFees: none,
    givenUp: none,
  };
}

function sumUnits(entries: readonly AccountEntry[], which: 'held' | 'credited'): Units {
  const sums = new Map<string, number>();
  for (const entry of entries) {
    for (const product in entry[which]) {
      sums.set(product, (sums.get(product) ?? 0) + (entry[which][product] ?? 0));
    }
  }
  return Object.fromEntries(sums);
}

function sameUnits(a: Units, b: Units): boolean {
  for (const product of new Set([...Object.keys(a), ...Object.keys(b)])) {
    if (unitsOf(a, product) !== unitsOf(b, product)) return false;
  }
  return true;
}
