import { unreachable } from '../base/assert.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { SupplierReason } from '../questions/match/match-supplier.ts';
import type { PaperDifference } from '../questions/match/supplier-differences.ts';
import type { Say } from '../words/say.ts';
import { productName } from './account-name.ts';
import { joined } from './joined.ts';
import { daysLater, recordsTogether, withOthers } from './match-words.ts';
import { sentence } from './sentence.ts';

/** Why a line of the supplier's statement and records of the book go together. */
export function supplierReasonWords(why: SupplierReason, say: Say): string {
  const later = (reason: string, days: number): string =>
    joined([reason, daysLater(days, 'there', say)], say);
  switch (why.kind) {
    case 'same_slip':
      return sentence(later(say`The same number, and the same in all`, why.days), say);
    case 'same_content':
      return withOthers(later(say`The same in all`, why.days), why.others, say);
    case 'records_together':
      return recordsTogether(why.count, say);
    case 'sort_not_said': {
      const same = say`The same in all; the line does not say what it is`;
      return sentence(later(same, why.days), say);
    }
    default:
      return unreachable(why);
  }
}

/** By what a line and a record differ: `21 Plum jam there, 12 here`. */
export function paperDifferenceWords(by: PaperDifference, ledger: Ledger, say: Say): string {
  const money = (minor: number) => say.money(minor, ledger.setup.season?.currency ?? '');
  switch (by.kind) {
    case 'units': {
      const name = productName(ledger.setup, by.product);
      return say`${name}: ${by.theirs} there, ${by.ours} in the book.`;
    }
    case 'amount':
      return say`${money(by.theirs)} there, ${money(by.ours)} in the book.`;
    case 'neighbour': {
      const name = (id: string) => ledger.setup.neighbours.get(id)?.name ?? id;
      return say`With ${name(by.theirs)} there, with ${name(by.ours)} in the book.`;
    }
    case 'way':
      return by.theirs === 'in'
        ? say`A swap in there, a swap out in the book.`
        : say`A swap out there, a swap in in the book.`;
    default:
      return unreachable(by);
  }
}
