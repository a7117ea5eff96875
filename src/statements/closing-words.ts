import { unreachable } from '../base/assert.ts';
import { daysBetween } from '../base/day.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { ClosingCause, ClosingItem, NextStep } from '../questions/closing/closing-item.ts';
import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';
import { joined } from './joined.ts';
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
export function closingWords(
  item: ClosingItem,
  ledger: Ledger,
  today: string,
  say: Say,
): ClosingWords {
  const words = new Speaker(ledger, today, say);
  return {
    title: words.title(item),
    left: words.left(item),
    cause: item.cause === undefined ? '' : words.cause(item.cause),
    next: words.next(item),
  };
}

const titles = onceEach(
  (say): Readonly<Record<string, string>> => ({
    'stockroom-counted': say`Stockroom counted`,
    stockroom: say`Goods on the shelf`,
    'pool:post': say`Posted orders shared out`,
    'pool:gift': say`Gift units shared out`,
    cashbox: say`Cash and cheques banked`,
    cards: say`Card takings arrived`,
    buyers: say`Online orders without a seller`,
    supplier: say`Supplier paid`,
    debits: say`Debits`,
    'prize-choices': say`Prize choices`,
    conflicts: say`Two versions of one record`,
  }),
);

const steps = onceEach(
  (say): Readonly<Record<NextStep, string>> => ({
    nothing: say`Nothing to do.`,
    count_the_stockroom: say`Count the stockroom: two people, without looking at the book.`,
    count_again_or_find_the_record: say`Count these products again, then look through the records
      that moved them.`,
    decide_on_unsold_goods: say`Decide: pass on to a neighbour group, bring back to the supplier,
      give away, or write off.`,
    find_the_missing_delivery: say`Find the delivery, swap or goods back that is not recorded.`,
    ask_the_family_to_pay: say`Hand over the statement and ask for the payment.`,
    move_the_payment_to_the_sibling: say`Edit the payment so that it stands under the right
      seller.`,
    hand_over_the_paid_order: say`Hand over the goods that were paid for online, and record goods
      out.`,
    record_the_gift_units: say`Record the gift units that were paid for.`,
    pay_the_family_back: say`Pay the amount back and record a refund.`,
    settle_the_stall: say`Count what came back and the takings, and settle the stall.`,
    remove_one_of_the_settlings: say`Compare the settlings and remove the one that is not right.`,
    share_out_the_pool: say`Share the units out among the sellers.`,
    correct_the_share_out: say`Edit the share-out: it gives more than the pool holds.`,
    bank_the_cash: say`Bring it to the bank and record the deposit.`,
    find_the_missing_receipt: say`Find the payment or stall takings that is not recorded.`,
    record_the_card_payout: say`Record the card payout when it arrives, with its fee.`,
    find_the_online_order: say`Find the online order these gift units belong to.`,
    await_the_debit_or_proceeds: say`Record the next debit, or the proceeds the supplier credits.`,
    ask_the_supplier_to_repay: say`Compare with the supplier’s statement and ask for the
      difference.`,
    bank_before_the_debit: say`Bank what is still held before that day, or speak to the supplier.`,
    ask_the_supplier_about_the_debit: say`Ask the supplier the same day: banks give little time to
      send a debit back.`,
    ask_for_the_choices: say`Ask the sellers, and record each choice.`,
    choose_which_record_stands: say`Open the record and choose which version stands.`,
    keep_the_goods_back: say`Keep these units back, do not sell them, and follow the supplier’s
      notice.`,
    mind_the_date: say`Keep the date in mind.`,
  }),
);

class Speaker {
  readonly #ledger: Ledger;
  readonly #today: string;
  readonly #say: Say;

  constructor(ledger: Ledger, today: string, say: Say) {
    this.#ledger = ledger;
    this.#today = today;
    this.#say = say;
  }

  title(item: ClosingItem): string {
    const say = this.#say;
    const [what = '', about = ''] = splitOnce(item.item);
    switch (what) {
      case 'owed':
        return this.#seller(about);
      case 'stall':
        return this.#stall(about);
      case 'hold':
        return say`Stop-sale of ${this.#product(about)}`;
      case 'debit':
        return say`Debit of ${this.#debitDay(about)}`;
      case 'deadline':
        return this.#deadline(about)?.name ?? about;
      default:
        return titles(say)[item.item] ?? item.item;
    }
  }

  left(item: ClosingItem): string {
    const say = this.#say;
    if (item.lines !== undefined) return this.#lines(item);
    const left = Object.entries(item.left);
    return joined(
      left.map(([account, amount]) => this.#amountLeft(account, amount)),
      say,
    );
  }

  cause(cause: ClosingCause): string {
    const say = this.#say;
    switch (cause.kind) {
      case 'never_counted':
        return say`The stockroom has not been counted.`;
      case 'goods_moved_after_count':
        return say`Counted on ${say.day(cause.counted)}; goods moved on ${say.day(cause.moved)}.`;
      case 'count_differs':
        return say`The count of ${say.day(cause.counted)} does not agree with the book.`;
      case 'goods_are_unsold':
        return say`These units are not sold.`;
      case 'more_out_than_in':
        return say`More went out than came in.`;
      case 'stop_sale':
        return say`${this.#product(cause.product)}: ${cause.reason}`;
      case 'not_settled':
        return say`The stall has not been settled.`;
      case 'settled_twice':
        return say`The stall was settled more than once.`;
      case 'not_shared':
        return say`These units are not yet shared.`;
      case 'shared_too_much':
        return say`More was shared than the pool holds.`;
      default:
        return this.#moneyCause(cause);
    }
  }

  next(item: ClosingItem): string {
    const say = this.#say;
    const [what = '', about = ''] = splitOnce(item.item);
    const day = what === 'deadline' ? this.#deadline(about)?.date : undefined;
    if (day === undefined) return steps(say)[item.next];
    const away = daysBetween(this.#today, day);
    if (away < 0) return say`Passed on ${say.day(day)}.`;
    if (away === 0) return say`Today, ${say.day(day)}.`;
    return say.count(away)`${say.day(day)}, in # day.|${say.day(day)}, in # days.`;
  }

  #moneyCause(cause: Extract<ClosingCause, MoneyCause>): string {
    const say = this.#say;
    switch (cause.kind) {
      case 'cheque_came_back':
        return say`A cheque of ${this.#money(cause.cents)} came back on ${say.day(cause.date)}.`;
      case 'sibling_the_other_way':
        return say`${this.#seller(cause.seller)} of the same family is out by the same amount the
          other way: the payment may stand under the wrong seller.`;
      case 'family_in_credit':
        return this.#creditParts(cause);
      case 'held_since':
        return say`Held since ${say.day(cause.date)}.`;
      case 'banked_too_much':
        return say`More went out than was recorded as coming in.`;
      case 'gifts_not_recorded':
        return say`Gift units were paid online and are not recorded as given.`;
      case 'gifts_without_order':
        return say`Gift units were given that no online order paid for.`;
      case 'owed_to_supplier':
        return cause.proceedsToCome > 0
          ? say`The group’s proceeds of ${this.#money(cause.proceedsToCome)} are not credited yet.`
          : say`The supplier has not taken all its due.`;
      case 'supplier_took_too_much':
        return say`The supplier has had more than its due.`;
      case 'account_too_low':
        return say`The debit of ${say.day(cause.date)} takes ${this.#money(cause.takes)}; the
          account holds ${this.#money(cause.holds)}.`;
      case 'debit_not_as_announced':
        return say`${this.#money(cause.announced)} was announced, ${this.#money(cause.taken)} was
          taken.`;
      default:
        return unreachable(cause);
    }
  }

  #creditParts(parts: { waiting: number; gifts: number; paidTooMuch: number }): string {
    const say = this.#say;
    const said = [
      parts.waiting > 0 ? say`paid orders waiting for goods ${this.#money(parts.waiting)}` : '',
      parts.gifts > 0
        ? say`gift units bought online, not recorded ${this.#money(parts.gifts)}`
        : '',
      parts.paidTooMuch > 0 ? say`paid too much ${this.#money(parts.paidTooMuch)}` : '',
    ].filter((part) => part !== '');
    return sentence(capitalised(said.join(say`; `)), say);
  }

  #amountLeft(account: string, amount: number): string {
    const say = this.#say;
    const [what = '', about = ''] = splitOnce(account);
    if (what === 'choices')
      return say.count(
        amount,
      )`${this.#seller(about)}: # choice missing|${this.#seller(about)}: # choices missing`;
    if (what === 'conflicts') return say.count(amount)`# record to decide|# records to decide`;
    const money = this.#money(Math.abs(amount));
    if (what === 'owed') return amount > 0 ? say`${money} still to pay` : say`${money} in credit`;
    if (what === 'supplier') return amount < 0 ? say`${money} to pay` : say`${money} paid too much`;
    if (what === 'bank') return say`${money} short`;
    return amount < 0 ? say`${money} too much out` : money;
  }

  #lines(item: ClosingItem): string {
    const say = this.#say;
    const signed = item.item === 'stockroom-counted';
    const said = Object.entries(item.lines ?? {}).map(([product, units]) => {
      const name = this.#product(product);
      const size = Math.abs(units);
      if (signed) return units < 0 ? say`${name} ${size} short` : say`${name} ${size} over`;
      return units < 0 ? say`${name} ${size} missing` : say.as('left')`${name} ${size}`;
    });
    return joined(said, say);
  }

  #money(minor: number): string {
    return this.#say.money(minor, this.#ledger.setup.season?.currency ?? 'XXX');
  }

  #seller(id: string): string {
    return this.#ledger.setup.sellers.get(id)?.name ?? id;
  }

  #product(id: string): string {
    return this.#ledger.setup.products.get(id)?.name ?? id;
  }

  #stall(id: string): string {
    const say = this.#say;
    const stall = this.#ledger.setup.stalls.get(id);
    if (stall === undefined) return say`Stall ${id}`;
    const host = this.#ledger.setup.hosts.get(stall.host)?.name ?? stall.host;
    return say`${host}, ${say.day(stall.starts.slice(0, 10))}`;
  }

  #debitDay(id: string): string {
    const say = this.#say;
    const record = this.#ledger.standing.get(id);
    return record?.kind === 'debit' ? say.day(record.date) : id;
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

/** `owed:ada` → [`owed`, `ada`]; an id without a colon is a name by itself. */
function splitOnce(item: string): [string, string] {
  const colon = item.indexOf(':');
  return colon === -1 ? [item, ''] : [item.slice(0, colon), item.slice(colon + 1)];
}
