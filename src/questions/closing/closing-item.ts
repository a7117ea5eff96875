import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord } from '../../records/record.ts';
import type { RecordsByAccount } from '../records-by-account.ts';

/** One line of the closing list: what must come out even, and what to do where it does not. */
export interface ClosingItem {
  /** A name that stays the same: an account like `owed:ada`, or what is looked at. */
  readonly item: string;
  readonly group: ClosingGroup;
  readonly state: 'done' | 'open' | 'not-needed';
  /**
   * What is left by account: minor units, or whole units for goods and credit. Products are never
   * netted: an account with 3 of one product and −3 of another has 6 left.
   */
  readonly left: Readonly<Record<string, number>>;
  /** Units by product behind `left`, with their sign, where it is goods or credit. */
  readonly lines?: Readonly<Record<string, number>>;
  /** Ids of the records behind it, in the order they happened. */
  readonly records: readonly string[];
  readonly cause?: ClosingCause;
  readonly next: NextStep;
}

export type ClosingGroup =
  | 'goods'
  | 'families'
  | 'stalls'
  | 'money'
  | 'prizes'
  | 'records'
  | 'dates';

/** Why something is probably open, with its figures (minor units, whole units, days). */
export type ClosingCause =
  | { readonly kind: 'never_counted' }
  | { readonly kind: 'goods_moved_after_count'; readonly counted: string; readonly moved: string }
  | { readonly kind: 'count_differs'; readonly counted: string }
  | { readonly kind: 'goods_are_unsold' }
  | { readonly kind: 'more_out_than_in' }
  | { readonly kind: 'cheque_came_back'; readonly date: string; readonly cents: number }
  | { readonly kind: 'sibling_the_other_way'; readonly seller: string; readonly cents: number }
  | ({ readonly kind: 'family_in_credit' } & CreditParts)
  | { readonly kind: 'not_settled' }
  | { readonly kind: 'settled_twice' }
  | { readonly kind: 'not_shared' }
  | { readonly kind: 'shared_too_much' }
  | { readonly kind: 'held_since'; readonly date: string }
  | { readonly kind: 'banked_too_much' }
  | { readonly kind: 'gifts_not_recorded' }
  | { readonly kind: 'gifts_without_order' }
  | { readonly kind: 'owed_to_supplier'; readonly proceedsToCome: number }
  | { readonly kind: 'supplier_took_too_much' }
  | {
      readonly kind: 'account_too_low';
      readonly date: string;
      readonly takes: number;
      readonly holds: number;
    }
  | {
      readonly kind: 'debit_not_as_announced';
      readonly date: string;
      readonly taken: number;
      readonly announced: number;
    }
  | { readonly kind: 'stop_sale'; readonly product: string; readonly reason: string };

/** How a family's credit comes about; the three add up to it (minor units). */
export interface CreditParts {
  /** Orders paid online that the seller brings, with the goods not yet taken over. */
  readonly waiting: number;
  /** Gift units bought online with no `gift` record yet. */
  readonly gifts: number;
  /** What is left: paid too much. */
  readonly paidTooMuch: number;
}

/** What to do next; the words for each are in statements/closing-words.ts. */
export type NextStep =
  | 'nothing'
  | 'count_the_stockroom'
  | 'count_again_or_find_the_record'
  | 'decide_on_unsold_goods'
  | 'find_the_missing_delivery'
  | 'ask_the_family_to_pay'
  | 'move_the_payment_to_the_sibling'
  | 'hand_over_the_paid_order'
  | 'record_the_gift_units'
  | 'pay_the_family_back'
  | 'settle_the_stall'
  | 'remove_one_of_the_settlings'
  | 'share_out_the_pool'
  | 'correct_the_share_out'
  | 'bank_the_cash'
  | 'find_the_missing_receipt'
  | 'record_the_card_payout'
  | 'find_the_online_order'
  | 'await_the_debit_or_proceeds'
  | 'ask_the_supplier_to_repay'
  | 'bank_before_the_debit'
  | 'ask_the_supplier_about_the_debit'
  | 'ask_for_the_choices'
  | 'choose_which_record_stands'
  | 'keep_the_goods_back'
  | 'mind_the_date';

/** What every part of the list may look at. */
export interface ClosingContext {
  readonly ledger: Ledger;
  /** All counting movements by day, sorted once for every part of the list. */
  readonly movements: readonly MovementRecord[];
  readonly recordsOf: RecordsByAccount;
  /** The day on which the list is read (`YYYY-MM-DD`). */
  readonly today: string;
}

/** One part of the list. Parts do not know of each other; their order is the list's order. */
export type ClosingPart = (context: ClosingContext) => readonly ClosingItem[];

/** Ids of the records behind an account. */
export function idsBehind(
  context: ClosingContext,
  ledger: 'stock' | 'money' | 'credit',
  account: string,
): string[] {
  return context.recordsOf(ledger, account).map((record) => record.id);
}

/** All units of an account without netting one product against another. */
export function unitsLeft(lines: Readonly<Record<string, number>>): number {
  return Object.values(lines).reduce((sum, units) => sum + Math.abs(units), 0);
}
