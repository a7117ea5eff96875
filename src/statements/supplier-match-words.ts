import { unreachable } from '../base/assert.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { SupplierReason } from '../questions/match/match-supplier.ts';
import type { PaperDifference } from '../questions/match/supplier-differences.ts';
import { productName } from './account-name.ts';
import { daysLater, othersMeant } from './match-words.ts';
import { moneyText, unitsText } from './money-text.ts';

/** Why a line of the supplier's statement and records of the book go together. */
export function supplierReasonWords(why: SupplierReason): string {
  switch (why.kind) {
    case 'same_slip':
      return `The same number, and the same in all${daysLater(why.days, 'there')}.`;
    case 'same_content':
      return `The same in all${daysLater(why.days, 'there')}${othersMeant(why.others)}.`;
    case 'records_together':
      return `${why.count} records together come to this amount.`;
    case 'sort_not_said':
      return `The same in all; the line does not say what it is${daysLater(why.days, 'there')}.`;
    default:
      return unreachable(why);
  }
}

/** By what a line and a record differ: `21 Plum jam there, 12 here`. */
export function paperDifferenceWords(by: PaperDifference, ledger: Ledger): string {
  const money = (minor: number) => moneyText(minor, ledger.setup.season?.currency ?? '');
  switch (by.kind) {
    case 'units': {
      const name = productName(ledger.setup, by.product);
      return `${name}: ${unitsText(by.theirs)} there, ${unitsText(by.ours)} in the book.`;
    }
    case 'amount':
      return `${money(by.theirs)} there, ${money(by.ours)} in the book.`;
    case 'neighbour': {
      const name = (id: string) => ledger.setup.neighbours.get(id)?.name ?? id;
      return `With ${name(by.theirs)} there, with ${name(by.ours)} in the book.`;
    }
    case 'way':
      return by.theirs === 'in'
        ? 'A swap in there, a swap out in the book.'
        : 'A swap out there, a swap in in the book.';
    default:
      return unreachable(by);
  }
}
