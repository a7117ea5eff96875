import { unreachable } from '../base/assert.ts';
import { daysBetween } from '../base/day.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { ClosingCause, ClosingItem, NextStep } from '../questions/closing/closing-item.ts';
import { dayText } from './day-text.ts';
import { moneyText, unitsText } from './money-text.ts';
import { capitalised, sentence } from './sentence.ts';

/** A line of the closing list in words. */
export interface ClosingWords {
  /** What is looked at: "Stockroom counted", "Ada L". */
  readonly title: string;
  /** What is left, in figures with their unit and direction; empty when nothing is. */
  readonly left: string;
  /** Why, as far as the book can tell; empty when it cannot. */
  readonly cause: string;
  /** What to do next. */
  readonly next: string;
}

/** @param today the day on which the list is read (`YYYY-MM-DD`) */
export function closingWords(item: ClosingItem, ledger: Ledger, today: string): ClosingWords {
  const words = new Speaker(ledger, today);
  return {
    title: words.title(item),
    left: words.left(item),
    cause: item.cause === undefined ? '' : words.cause(item.cause),
    next: words.next(item),
  };
}

const TITLES: Readonly<Record<string, string>> = {
  'stockroom-counted': 'Stockroom counted',
  stockroom: 'Goods on the shelf',
  'pool:post': 'Posted orders shared out',
  'pool:gift': 'Gift units shared out',
  cashbox: 'Cash and cheques banked',
  cards: 'Card takings arrived',
  buyers: 'Online orders without a seller',
  supplier: 'Supplier paid',
  debits: 'Debits',
  'prize-choices': 'Prize choices',
  conflicts: 'Two versions of one record',
};

const STEPS: Readonly<Record<NextStep, string>> = {
  nothing: 'Nothing to do.',
  count_the_stockroom: 'Count the stockroom: two people, without looking at the book.',
  count_again_or_find_the_record:
    'Count these products again, then look through the records that moved them.',
  decide_on_unsold_goods: 'Decide: pass on to a neighbour group, give away, or write off.',
  find_the_missing_delivery: 'Find the delivery, swap or goods back that is not recorded.',
  ask_the_family_to_pay: 'Hand over the statement and ask for the payment.',
  move_the_payment_to_the_sibling: 'Edit the payment so that it stands under the right seller.',
  hand_over_the_paid_order: 'Hand over the goods that were paid for online, and record goods out.',
  record_the_gift_units: 'Record the gift units that were paid for.',
  pay_the_family_back: 'Pay the amount back and record a refund.',
  settle_the_stall: 'Count what came back and the takings, and settle the stall.',
  remove_one_of_the_settlings: 'Compare the settlings and remove the one that is not right.',
  share_out_the_pool: 'Share the units out among the sellers.',
  correct_the_share_out: 'Edit the share-out: it gives more than the pool holds.',
  bank_the_cash: 'Bring it to the bank and record the deposit.',
  find_the_missing_receipt: 'Find the payment or stall takings that is not recorded.',
  record_the_card_payout: 'Record the card payout when it arrives, with its fee.',
  find_the_online_order: 'Find the online order these gift units belong to.',
  await_the_debit_or_proceeds: 'Record the next debit, or the proceeds the supplier credits.',
  ask_the_supplier_to_repay: 'Compare with the supplier’s statement and ask for the difference.',
  bank_before_the_debit: 'Bank what is still held before that day, or speak to the supplier.',
  ask_the_supplier_about_the_debit:
    'Ask the supplier the same day: banks give little time to send a debit back.',
  ask_for_the_choices: 'Ask the sellers, and record each choice.',
  choose_which_record_stands: 'Open the record and choose which version stands.',
  keep_the_goods_back: 'Keep these units back, do not sell them, and follow the supplier’s notice.',
  mind_the_date: 'Keep the date in mind.',
};

class Speaker {
  readonly #ledger: Ledger;
  readonly #today: string;

  constructor(ledger: Ledger, today: string) {
    this.#ledger = ledger;
    this.#today = today;
  }

  title(item: ClosingItem): string {
    const [what = '', about = ''] = splitOnce(item.item);
    switch (what) {
      case 'owed':
        return this.#seller(about);
      case 'stall':
        return this.#stall(about);
      case 'hold':
        return `Stop-sale of ${this.#product(about)}`;
      case 'debit':
        return `Debit of ${this.#debitDay(about)}`;
      case 'deadline':
        return this.#deadline(about)?.name ?? about;
      default:
        return TITLES[item.item] ?? item.item;
    }
  }

  left(item: ClosingItem): string {
    if (item.lines !== undefined) return this.#lines(item);
    return Object.entries(item.left)
      .map(([account, amount]) => this.#amountLeft(account, amount))
      .join(', ');
  }

  cause(cause: ClosingCause): string {
    switch (cause.kind) {
      case 'never_counted':
        return 'The stockroom has not been counted.';
      case 'goods_moved_after_count':
        return `Counted on ${dayText(cause.counted)}; goods moved on ${dayText(cause.moved)}.`;
      case 'count_differs':
        return `The count of ${dayText(cause.counted)} does not agree with the book.`;
      case 'goods_are_unsold':
        return 'These units are not sold.';
      case 'more_out_than_in':
        return 'More went out than came in.';
      case 'stop_sale':
        return `${this.#product(cause.product)}: ${cause.reason}`;
      case 'not_settled':
        return 'The stall has not been settled.';
      case 'settled_twice':
        return 'The stall was settled more than once.';
      case 'not_shared':
        return 'These units are not yet shared.';
      case 'shared_too_much':
        return 'More was shared than the pool holds.';
      default:
        return this.#moneyCause(cause);
    }
  }

  next(item: ClosingItem): string {
    const [what = '', about = ''] = splitOnce(item.item);
    const day = what === 'deadline' ? this.#deadline(about)?.date : undefined;
    if (day === undefined) return STEPS[item.next];
    const away = daysBetween(this.#today, day);
    if (away < 0) return `Passed on ${dayText(day)}.`;
    if (away === 0) return `Today, ${dayText(day)}.`;
    return `${dayText(day)}, in ${away} ${away === 1 ? 'day' : 'days'}.`;
  }

  #moneyCause(cause: Extract<ClosingCause, MoneyCause>): string {
    switch (cause.kind) {
      case 'cheque_came_back':
        return `A cheque of ${this.#money(cause.cents)} came back on ${dayText(cause.date)}.`;
      case 'sibling_the_other_way':
        return (
          `${this.#seller(cause.seller)} of the same family is out by the same amount the other ` +
          'way: the payment may stand under the wrong seller.'
        );
      case 'family_in_credit':
        return this.#creditParts(cause);
      case 'held_since':
        return `Held since ${dayText(cause.date)}.`;
      case 'banked_too_much':
        return 'More went out than was recorded as coming in.';
      case 'gifts_not_recorded':
        return 'Gift units were paid online and are not recorded as given.';
      case 'gifts_without_order':
        return 'Gift units were given that no online order paid for.';
      case 'owed_to_supplier':
        return cause.proceedsToCome > 0
          ? `The group’s proceeds of ${this.#money(cause.proceedsToCome)} are not credited yet.`
          : 'The supplier has not taken all its due.';
      case 'supplier_took_too_much':
        return 'The supplier has had more than its due.';
      case 'account_too_low':
        return (
          `The debit of ${dayText(cause.date)} takes ${this.#money(cause.takes)}; ` +
          `the account holds ${this.#money(cause.holds)}.`
        );
      case 'debit_not_as_announced':
        return (
          `${this.#money(cause.announced)} was announced, ` +
          `${this.#money(cause.taken)} was taken.`
        );
      default:
        return unreachable(cause);
    }
  }

  #creditParts(parts: { waiting: number; gifts: number; paidTooMuch: number }): string {
    const said = [
      parts.waiting > 0 ? `paid orders waiting for goods ${this.#money(parts.waiting)}` : '',
      parts.gifts > 0 ? `gift units bought online, not recorded ${this.#money(parts.gifts)}` : '',
      parts.paidTooMuch > 0 ? `paid too much ${this.#money(parts.paidTooMuch)}` : '',
    ].filter((part) => part !== '');
    const text = said.join('; ');
    return sentence(capitalised(text));
  }

  #amountLeft(account: string, amount: number): string {
    const [what = '', about = ''] = splitOnce(account);
    if (what === 'choices') return `${this.#seller(about)}: ${counted(amount, 'choice')} missing`;
    if (what === 'conflicts') return `${counted(amount, 'record')} to decide`;
    const money = this.#money(Math.abs(amount));
    if (what === 'owed') return `${money} ${amount > 0 ? 'still to pay' : 'in credit'}`;
    if (what === 'supplier') return `${money} ${amount < 0 ? 'to pay' : 'paid too much'}`;
    if (what === 'bank') return `${money} short`;
    return amount < 0 ? `${money} too much out` : money;
  }

  #lines(item: ClosingItem): string {
    const signed = item.item === 'stockroom-counted';
    return Object.entries(item.lines ?? {})
      .map(([product, units]) => {
        const direction = signed ? (units < 0 ? ' short' : ' over') : units < 0 ? ' missing' : '';
        return `${this.#product(product)} ${unitsText(Math.abs(units))}${direction}`;
      })
      .join(', ');
  }

  #money(minor: number): string {
    return moneyText(minor, this.#ledger.setup.season?.currency ?? 'XXX');
  }

  #seller(id: string): string {
    return this.#ledger.setup.sellers.get(id)?.name ?? id;
  }

  #product(id: string): string {
    return this.#ledger.setup.products.get(id)?.name ?? id;
  }

  #stall(id: string): string {
    const stall = this.#ledger.setup.stalls.get(id);
    if (stall === undefined) return `Stall ${id}`;
    const host = this.#ledger.setup.hosts.get(stall.host)?.name ?? stall.host;
    return `${host}, ${dayText(stall.starts.slice(0, 10))}`;
  }

  #debitDay(id: string): string {
    const record = this.#ledger.standing.get(id);
    return record?.kind === 'debit' ? dayText(record.date) : id;
  }

  #deadline(id: string): { readonly name: string; readonly date: string } | undefined {
    return this.#ledger.setup.season?.deadlines?.find((deadline) => deadline.deadline === id);
  }
}

interface MoneyCause {
  readonly kind:
    | 'cheque_came_back'
    | 'sibling_the_other_way'
    | 'family_in_credit'
    | 'held_since'
    | 'banked_too_much'
    | 'gifts_not_recorded'
    | 'gifts_without_order'
    | 'owed_to_supplier'
    | 'supplier_took_too_much'
    | 'account_too_low'
    | 'debit_not_as_announced';
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** `owed:ada` → [`owed`, `ada`]; an id without a colon is a name by itself. */
function splitOnce(item: string): [string, string] {
  const colon = item.indexOf(':');
  return colon === -1 ? [item, ''] : [item.slice(0, colon), item.slice(colon + 1)];
}
