import type { Ledger } from '../ledger/ledger.ts';
import type { Look } from '../questions/explain/decide.ts';
import type { Explanation } from '../questions/explain/explain.ts';
import { type Hypothesis, outcomeOf } from '../questions/explain/hypothesis.ts';
import type { NumberField } from '../questions/explain/number-fields.ts';
import type { MovementRecord } from '../records/record.ts';
import type { Say } from '../words/say.ts';
import { accountName, productName, sellerName, stallName } from './account-name.ts';
import { joined } from './joined.ts';
import { kindName } from './kind-name.ts';
import { recordSentence } from './record-sentence.ts';
import { sentence } from './sentence.ts';

/**
 * An explanation in words: what a record says, what would make it agree, and which paper or whose
 * word would settle it. Nothing is asserted.
 */
export function explanationWords({ mistakes }: Explanation, ledger: Ledger, say: Say): string {
  const words = new MistakeWords(ledger, say);
  if (mistakes.length === 1) return mistakes.map((mistake) => words.whole(mistake)).join('');
  const each = mistakes.map((mistake, at) => say`${at + 1}. ${words.whole(mistake)}`);
  return mistakes.length === 2
    ? say`Two mistakes at once. ${each.join(' ')}`
    : say`Three mistakes at once. ${each.join(' ')}`;
}

/** Where to look next, in words. */
export function lookWords({ account, why, products }: Look, ledger: Ledger, say: Say): string {
  const cut = account.indexOf(':');
  const which = account.slice(0, cut);
  const place =
    which === 'stock' || which === 'money' || which === 'credit'
      ? accountName(ledger, which, account.slice(cut + 1), say)
      : account;
  const named = joined(
    products.map((product) => productName(ledger.setup, product)),
    say,
  );
  const what = named === '' ? place : say`${place}: ${named}`;
  return why === 'tells-apart'
    ? say`To decide, look at ${what}.`
    : say`Count again before anything is changed: ${what}.`;
}

class MistakeWords {
  readonly #ledger: Ledger;
  readonly #say: Say;

  constructor(ledger: Ledger, say: Say) {
    this.#ledger = ledger;
    this.#say = say;
  }

  whole(mistake: Hypothesis): string {
    const settles = this.#settles(mistake);
    return settles === '' ? this.#what(mistake) : `${this.#what(mistake)} ${settles}`;
  }

  #what(mistake: Hypothesis): string {
    const say = this.#say;
    const { sort, record, field, to, adds, becomes } = mistake;
    if (adds !== undefined) return this.#missing(adds);
    if (record === undefined) return '';
    if (field !== undefined && to !== undefined) return this.#number(mistake, record, field, to);
    if (sort === 'doubled') {
      return say`${this.#told(record)} is there twice; once would make it agree.`;
    }
    if (sort === 'not-ours') return say`${this.#told(record)}; without it, it would agree.`;
    if (sort === 'removed-wrongly') {
      return say`${this.#told(record)} was removed; with it, it would agree.`;
    }
    if (becomes === undefined) return say`${this.#subject(record)}; without it, it would agree.`;
    return this.#becomes(mistake, record, becomes);
  }

  #number({ sort }: Hypothesis, record: MovementRecord, field: NumberField, to: number): string {
    const say = this.#say;
    const subject = this.#subject(record);
    const said = this.#amount(field, field.value);
    if (sort === 'line-left-out') {
      const missing = this.#amount(field, to);
      return say`${subject} names no ${this.#goods(field)}; ${missing} would make it agree.`;
    }
    if (to === 0) return say`${subject} says ${said}; without them it would agree.`;
    const wanted = field.product === undefined ? this.#money(to) : say.units(to);
    if (sort === 'cases-for-singles' && record.kind !== 'stall-close') {
      const cases = this.#cases(field, to);
      return say`${subject} says ${said}; ${wanted} would make it agree (${cases}).`;
    }
    return say`${subject} says ${said}; ${wanted} would make it agree.`;
  }

  #cases({ value }: NumberField, to: number): string {
    const [large, small] = [Math.max(value, to), Math.min(value, to)];
    return this.#say`${small} × a case of ${large / small}`;
  }

  #becomes({ sort }: Hypothesis, record: MovementRecord, becomes: MovementRecord): string {
    const say = this.#say;
    if (sort === 'wrong-seller' && record.kind === 'pass') {
      return say`${this.#told(record)}; “${this.#sentence(becomes)}” would make it agree.`;
    }
    if (sort === 'wrong-seller' && 'seller' in becomes && becomes.seller !== undefined) {
      const other = sellerName(this.#ledger.setup, becomes.seller);
      return say`${this.#told(record)}; ${other} in its place would make it agree.`;
    }
    if (sort === 'wrong-day' && 'date' in becomes) {
      return say`${this.#told(record)}; ${say.day(becomes.date)} as its day would make it agree.`;
    }
    if (sort === 'edited-wrongly') {
      const before = this.#sentence(becomes);
      return say`${this.#subject(record)} was edited; what it said before, “${before}”, would make
        it agree.`;
    }
    return say`${this.#told(record)}; “${this.#sentence(becomes)}” would make it agree.`;
  }

  #missing(adds: MovementRecord): string {
    return this.#say`Not in the book: ${this.#sentence(adds)}. With it, it would agree.`;
  }

  #sentence(record: MovementRecord): string {
    return recordSentence(record, this.#ledger, this.#say);
  }

  #told(record: MovementRecord): string {
    return this.#say`${this.#sentence(record)} (${this.#say.day(record.date)})`;
  }

  /** `Goods out to Ada L. on 12 Mar 2027`. */
  #subject(record: MovementRecord): string {
    const say = this.#say;
    const { setup } = this.#ledger;
    const kind = kindName(record.kind, say);
    const day = say.day(record.date);
    const neighbour = (id: string) => setup.neighbours.get(id)?.name ?? id;
    switch (record.kind) {
      case 'handover':
      case 'refund':
        return say`${kind} to ${sellerName(setup, record.seller)} on ${day}`;
      case 'return':
      case 'payment':
        return say`${kind} from ${sellerName(setup, record.seller)} on ${day}`;
      case 'pass': {
        const [from, to] = [sellerName(setup, record.from), sellerName(setup, record.to)];
        return say`${kind} from ${from} to ${to} on ${day}`;
      }
      case 'swap-in':
        return say`${kind} from ${neighbour(record.neighbour)} on ${day}`;
      case 'swap-out':
        return say`${kind} to ${neighbour(record.neighbour)} on ${day}`;
      case 'stall-close':
        return say`${kind}, ${stallName(setup, record.stall, say)}, on ${day}`;
      case 'gift':
      case 'loss':
        return record.seller === undefined
          ? say`${kind} on ${day}`
          : say`${kind} of ${sellerName(setup, record.seller)} on ${day}`;
      case 'online':
        return say`${kind} ${record.order} on ${day}`;
      default:
        return say`${kind} on ${day}`;
    }
  }

  #amount(field: NumberField, value: number): string {
    const say = this.#say;
    const size =
      field.product === undefined
        ? this.#money(value)
        : say.as('goods')`${value} ${this.#goods(field)}`;
    const said = amountPart(field.part, size, say);
    if (field.product === undefined || field.seller === undefined) return said;
    return say`${said} for ${sellerName(this.#ledger.setup, field.seller)}`;
  }

  #goods({ product }: NumberField): string {
    return productName(this.#ledger.setup, product ?? '');
  }

  #money(minor: number): string {
    return this.#say.money(minor, this.#ledger.setup.season?.currency ?? '');
  }

  /** The paper or the person that knows. */
  #settles(mistake: Hypothesis): string {
    const say = this.#say;
    const { before, after } = outcomeOf(mistake);
    const record = before ?? after;
    if (record === undefined) return '';
    if (record.kind === 'payment' && record.receipt !== undefined) {
      return say`The receipt ${record.receipt} would settle it.`;
    }
    if ('slip' in record && record.slip !== undefined) {
      return say`The slip ${record.slip} would settle it.`;
    }
    if (record.kind === 'stall-close' && record.counters !== undefined) {
      return say`Ask ${say.list(record.counters)}, who counted.`;
    }
    if (BANK.has(record.kind)) return say`The bank statement would settle it.`;
    if (record.kind === 'delivery') return say`The delivery slip would settle it.`;
    const seller = 'seller' in record ? record.seller : undefined;
    if (seller === undefined) return '';
    return sentence(say`Ask the family of ${sellerName(this.#ledger.setup, seller)}`, say);
  }
}

/** An amount with what it is in its record: `3 Plum jam taken out`, `$40.00 in cash`. */
function amountPart(part: string, amount: string, say: Say): string {
  switch (part) {
    case 'out':
      return say`${amount} taken out`;
    case 'back':
      return say`${amount} brought back`;
    case 'damaged':
      return say`${amount} damaged`;
    case 'cash':
      return say`${amount} in cash`;
    case 'float':
      return say`${amount} as float`;
    case 'cards':
      return say`${amount} by card`;
    case 'cheques':
      return say`${amount} in cheques`;
    case 'paidout':
      return say`${amount} paid out`;
    case 'fee':
      return say`${amount} as fee`;
    case 'paid':
      return say`${amount} paid`;
    default:
      return amount;
  }
}

const BANK: ReadonlySet<string> = new Set([
  'deposit',
  'debit',
  'debit-returned',
  'bank-fee',
  'bounced',
  'card-settle',
]);
