import type {
  ClosingGroup,
  ClosingItem,
  NextStep,
} from '../../../questions/closing/closing-item.ts';
import { say } from '../../say.ts';

/** The groups of the closing list in the order in which people work through them. */
export const closingGroups: readonly (readonly [ClosingGroup, string])[] = [
  ['goods', say`Goods`],
  ['families', say`Families`],
  ['stalls', say`Stalls`],
  ['money', say`Money`],
  ['prizes', say`Prizes`],
  ['records', say`Papers and records`],
  ['dates', say`Dates`],
];

type Link = readonly [to: string, words: string];

/** Where the next step of an item is taken; none where nothing is to be done in the book. */
export function nextLinks(
  item: ClosingItem,
  familyOf: (seller: string) => string,
): readonly Link[] {
  const about = item.item.slice(item.item.indexOf(':') + 1);
  const family = `/families/${familyOf(about)}`;
  // The forms open with what is left, ready to be lessened.
  const units = Object.entries(item.lines ?? {}).map(([id, many]) => [`lines.${id}`, `${many}`]);
  const left = new URLSearchParams(units);
  const last = `/records/${item.records.at(-1) ?? ''}`;
  const links: Partial<Record<NextStep, readonly Link[]>> = {
    count_the_stockroom: [['/count', say`Count`]],
    count_again_or_find_the_record: [
      ['/count', say`Count again`],
      [`/count/${item.records.at(-1) ?? ''}`, say`Open the count`],
    ],
    decide_on_unsold_goods: [
      [`/add/swap-out?${left}`, say`Pass on to a neighbour group`],
      [`/add/gift?from=stockroom&${left}`, say`Give away`],
      [`/add/loss?${left}`, say`Write off`],
    ],
    find_the_missing_delivery: [['/add/delivery', say`Record a delivery`]],
    ask_the_family_to_pay: [[family, say`Open the family, record its payment`]],
    move_the_payment_to_the_sibling: [[family, say`Open the family`]],
    hand_over_the_paid_order: [[`/add/handover?seller=${about}`, say`Goods out`]],
    record_the_gift_units: [
      [about === item.item ? '/add/gift' : `/add/gift?seller=${about}`, say`Record gift units`],
    ],
    pay_the_family_back: [[`/add/refund?seller=${about}`, say`Record a refund`]],
    settle_the_stall: [[`/stalls/${about}`, say`Settle the stall`]],
    remove_one_of_the_settlings: [[`/stalls/${about}`, say`Open the stall`]],
    share_out_the_pool: [[sharing(item.item), say`Share out`]],
    correct_the_share_out: [[last, say`Open the share-out`]],
    bank_the_cash: [['/add/deposit', say`Record a deposit`]],
    find_the_missing_receipt: [['/add/payment', say`Record a payment`]],
    record_the_card_payout: [['/add/card-settle', say`Record a card payout`]],
    find_the_online_order: [['/add/online', say`Record an online order`]],
    await_the_debit_or_proceeds: [
      ['/add/debit', say`Record a debit`],
      ['/add/settle', say`Record the proceeds`],
    ],
    ask_the_supplier_to_repay: [['/accounts/money/supplier', say`Open the supplier account`]],
    bank_before_the_debit: [['/add/deposit', say`Record a deposit`]],
    ask_the_supplier_about_the_debit: [[last, say`Open the debit`]],
    ask_for_the_choices: [['/prizes', say`Record the choices`]],
    choose_which_record_stands: [[last, say`Open the record`]],
    keep_the_goods_back: [['/set-up/holds', say`Open stop-sales`]],
  };
  return links[item.next] ?? [];
}

/** A stall's pool is shared on the stall's own page, the others have one each. */
function sharing(item: string): string {
  const stall = /^(?:pool:)?stall:(.+)$/.exec(item)?.[1];
  return stall === undefined ? `/pools/${item.slice('pool:'.length)}` : `/stalls/${stall}`;
}
