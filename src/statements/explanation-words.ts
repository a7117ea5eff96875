import type { Ledger } from '../ledger/ledger.ts';
import type { Look } from '../questions/explain/decide.ts';
import type { Explanation } from '../questions/explain/explain.ts';
import { type Hypothesis, outcomeOf } from '../questions/explain/hypothesis.ts';
import type { NumberField } from '../questions/explain/number-fields.ts';
import type { MovementRecord } from '../records/record.ts';
import { accountName, productName, sellerName, stallName } from './account-name.ts';
import { dayText } from './day-text.ts';
import { kindNames } from './kind-name.ts';
import { moneyText, unitsText } from './money-text.ts';
import { recordSentence } from './record-sentence.ts';
import { sentence } from './sentence.ts';

/**
 * An explanation in words: what a record says, what would make it agree, and which paper or whose
 * word would settle it. Nothing is asserted.
 */
export function explanationWords({ mistakes }: Explanation, ledger: Ledger): string {
  const words = new MistakeWords(ledger);
  if (mistakes.length === 1) return mistakes.map((mistake) => words.whole(mistake)).join('');
  const count = mistakes.length === 2 ? 'Two' : 'Three';
  const each = mistakes.map((mistake, at) => `${at + 1}. ${words.whole(mistake)}`);
  return `${count} mistakes at once. ${each.join(' ')}`;
}

/** Where to look next, in words. */
export function lookWords({ account, why, products }: Look, ledger: Ledger): string {
  const cut = account.indexOf(':');
  const which = account.slice(0, cut);
  const place =
    which === 'stock' || which === 'money' || which === 'credit'
      ? accountName(ledger, which, account.slice(cut + 1))
      : account;
  const named = products.map((product) => productName(ledger.setup, product)).join(', ');
  const what = named === '' ? place : `${place}: ${named}`;
  return why === 'tells-apart'
    ? `To decide, look at ${what}.`
    : `Count again before anything is changed: ${what}.`;
}

class MistakeWords {
  readonly #ledger: Ledger;

  constructor(ledger: Ledger) {
    this.#ledger = ledger;
  }

  whole(mistake: Hypothesis): string {
    const settles = this.#settles(mistake);
    return settles === '' ? this.#what(mistake) : `${this.#what(mistake)} ${settles}`;
  }

  #what(mistake: Hypothesis): string {
    const { sort, record, field, to, adds, becomes } = mistake;
    if (adds !== undefined) return this.#missing(adds);
    if (record === undefined) return '';
    const subject = this.#subject(record);
    if (field !== undefined && to !== undefined) return this.#number(mistake, record, field, to);
    if (sort === 'doubled') {
      return `${this.#told(record)} is there twice; once would make it agree.`;
    }
    if (sort === 'not-ours') return `${this.#told(record)}; without it, it would agree.`;
    if (sort === 'removed-wrongly') {
      return `${this.#told(record)} was removed; with it, it would agree.`;
    }
    if (becomes === undefined) return `${subject}; without it, it would agree.`;
    return this.#becomes(mistake, record, becomes);
  }

  #number({ sort }: Hypothesis, record: MovementRecord, field: NumberField, to: number): string {
    const subject = this.#subject(record);
    const said = this.#amount(field, field.value);
    if (sort === 'line-left-out') {
      const missing = this.#amount(field, to);
      return `${subject} names no ${this.#goods(field)}; ${missing} would make it agree.`;
    }
    if (to === 0) return `${subject} says ${said}; without them it would agree.`;
    const wanted = field.product === undefined ? this.#money(to) : unitsText(to);
    const why = sort === 'cases-for-singles' ? this.#cases(record, field, to) : '';
    return `${subject} says ${said}; ${wanted} would make it agree${why}.`;
  }

  #cases(record: MovementRecord, { value }: NumberField, to: number): string {
    const [large, small] = [Math.max(value, to), Math.min(value, to)];
    const times = large / small;
    return record.kind === 'stall-close' ? '' : ` (${unitsText(small)} × a case of ${times})`;
  }

  #becomes({ sort }: Hypothesis, record: MovementRecord, becomes: MovementRecord): string {
    const subject = this.#subject(record);
    if (sort === 'wrong-seller' && record.kind === 'pass') {
      return `${this.#told(record)}; “${this.#sentence(becomes)}” would make it agree.`;
    }
    if (sort === 'wrong-seller' && 'seller' in becomes && becomes.seller !== undefined) {
      const other = sellerName(this.#ledger.setup, becomes.seller);
      return `${this.#told(record)}; ${other} in its place would make it agree.`;
    }
    if (sort === 'wrong-day' && 'date' in becomes) {
      return `${this.#told(record)}; ${dayText(becomes.date)} as its day would make it agree.`;
    }
    if (sort === 'edited-wrongly') {
      const before = recordSentence(becomes, this.#ledger);
      return `${subject} was edited; what it said before, “${before}”, would make it agree.`;
    }
    return `${this.#told(record)}; “${this.#sentence(becomes)}” would make it agree.`;
  }

  #missing(adds: MovementRecord): string {
    return `Not in the book: ${recordSentence(adds, this.#ledger)}. With it, it would agree.`;
  }

  #sentence(record: MovementRecord): string {
    return recordSentence(record, this.#ledger);
  }

  #told(record: MovementRecord): string {
    return `${this.#sentence(record)} (${dayText(record.date)})`;
  }

  /** `Goods out to Ada L. on 12 Mar 2027`. */
  #subject(record: MovementRecord): string {
    return `${kindNames[record.kind]}${this.#party(record)} on ${dayText(record.date)}`;
  }

  #party(record: MovementRecord): string {
    const { setup } = this.#ledger;
    switch (record.kind) {
      case 'handover':
      case 'refund':
        return ` to ${sellerName(setup, record.seller)}`;
      case 'return':
      case 'payment':
        return ` from ${sellerName(setup, record.seller)}`;
      case 'pass':
        return ` from ${sellerName(setup, record.from)} to ${sellerName(setup, record.to)}`;
      case 'swap-in':
        return ` from ${setup.neighbours.get(record.neighbour)?.name ?? record.neighbour}`;
      case 'swap-out':
        return ` to ${setup.neighbours.get(record.neighbour)?.name ?? record.neighbour}`;
      case 'stall-close':
        return `, ${stallName(setup, record.stall)},`;
      case 'gift':
      case 'loss':
        return record.seller === undefined ? '' : ` of ${sellerName(setup, record.seller)}`;
      case 'online':
        return ` ${record.order}`;
      default:
        return '';
    }
  }

  #amount(field: NumberField, value: number): string {
    const part = PARTS[field.part] ?? '';
    if (field.product === undefined) return `${this.#money(value)}${part}`;
    const seller =
      field.seller === undefined ? '' : ` for ${sellerName(this.#ledger.setup, field.seller)}`;
    return `${unitsText(value)} ${this.#goods(field)}${part}${seller}`;
  }

  #goods({ product }: NumberField): string {
    return productName(this.#ledger.setup, product ?? '');
  }

  #money(minor: number): string {
    return moneyText(minor, this.#ledger.setup.season?.currency ?? '');
  }

  /** The paper or the person that knows. */
  #settles(mistake: Hypothesis): string {
    const { before, after } = outcomeOf(mistake);
    const record = before ?? after;
    if (record === undefined) return '';
    if (record.kind === 'payment' && record.receipt !== undefined) {
      return `The receipt ${record.receipt} would settle it.`;
    }
    if ('slip' in record && record.slip !== undefined) {
      return `The slip ${record.slip} would settle it.`;
    }
    if (record.kind === 'stall-close' && record.counters !== undefined) {
      return `Ask ${record.counters.join(' and ')}, who counted.`;
    }
    if (BANK.has(record.kind)) return 'The bank statement would settle it.';
    if (record.kind === 'delivery') return 'The delivery slip would settle it.';
    const seller = 'seller' in record ? record.seller : undefined;
    if (seller !== undefined) {
      return sentence(`Ask the family of ${sellerName(this.#ledger.setup, seller)}`);
    }
    return '';
  }
}

const PARTS: Readonly<Record<string, string>> = {
  out: ' taken out',
  back: ' brought back',
  damaged: ' damaged',
  cash: ' in cash',
  float: ' as float',
  cards: ' by card',
  cheques: ' in cheques',
  paidout: ' paid out',
  fee: ' as fee',
  paid: ' paid',
};

const BANK: ReadonlySet<string> = new Set([
  'deposit',
  'debit',
  'debit-returned',
  'bank-fee',
  'bounced',
  'card-settle',
]);
