import { byText } from '../base/order.ts';
import { sum } from '../base/sum.ts';
import type { Ledger } from '../ledger/ledger.ts';

/** One seller: units taken over and not brought back, and minor units still to pay. */
export interface SellerBalance {
  readonly seller: string;
  readonly name: string;
  readonly active: boolean;
  readonly unitsOut: number;
  /** Minor units; negative is in credit. */
  readonly owes: number;
}

export interface FamilyBalance {
  readonly family: string;
  readonly name: string;
  readonly sellers: readonly SellerBalance[];
  readonly unitsOut: number;
  /** Minor units of all its sellers together; negative is in credit. */
  readonly owes: number;
}

export interface FamilyBalances {
  /** By the adult's name, then id. */
  readonly families: readonly FamilyBalance[];
  /** Minor units that movements name under sellers who are in no family. */
  readonly unplaced: number;
  readonly unitsOut: number;
  /** Minor units of families with something to pay, and of those in credit, each by itself. */
  readonly stillToPay: number;
  readonly inCredit: number;
  /** Still to pay less in credit, with what is unplaced: what the ledger says all families owe. */
  readonly owes: number;
}

/** What every family has out and still has to pay; the totals are the ledger's own. */
export function familyBalances(ledger: Ledger): FamilyBalances {
  const families = [...ledger.setup.families.values()]
    .map(({ family, name }) => familyBalance(ledger, family, name))
    .sort((a, b) => byText(a.name, b.name) || byText(a.family, b.family));
  const placed = new Set(families.flatMap(({ sellers }) => sellers.map(({ seller }) => seller)));
  let owes = 0;
  let unplaced = 0;
  for (const account of ledger.balances.table('money').keys()) {
    if (!account.startsWith('owed:')) continue;
    const minor = ledger.balances.moneyOf(account);
    owes += minor;
    if (!placed.has(account.slice('owed:'.length))) unplaced += minor;
  }
  return {
    families,
    unplaced,
    unitsOut: sum(families.map((family) => family.unitsOut)),
    stillToPay: sum(families.map((family) => Math.max(0, family.owes))),
    inCredit: sum(families.map((family) => Math.max(0, -family.owes))),
    owes,
  };
}

function familyBalance(ledger: Ledger, family: string, name: string): FamilyBalance {
  const sellers = [...ledger.setup.sellers.values()]
    .filter((seller) => seller.family === family)
    .map(({ seller, name: sellerName, active }) => ({
      seller,
      name: sellerName,
      active,
      unitsOut: ledger.balances.unitsOf('stock', `seller:${seller}`),
      owes: ledger.balances.moneyOf(`owed:${seller}`),
    }))
    .sort((a, b) => byText(a.name, b.name) || byText(a.seller, b.seller));
  return {
    family,
    name,
    sellers,
    unitsOut: sum(sellers.map((seller) => seller.unitsOut)),
    owes: sum(sellers.map((seller) => seller.owes)),
  };
}
