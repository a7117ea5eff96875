import { canonicalText } from '../../base/canonical-text.ts';
import { minorDigits } from '../../base/currency.ts';
import type { Lines } from '../../records/fields.ts';
import { type NameClass, NameIndex } from './known-names.ts';
import type { LineDraft } from './line-kind.ts';
import * as data from './line-words.ts';
import { type LineContext, readLine } from './read-line.ts';

/**
 * A record as the line that is read back as exactly this record: what a person could type for it.
 * Names are written as ids, with the word of their list in front where the id alone is not clear.
 */
export function writeLine(
  draft: LineDraft,
  context: LineContext,
  language: data.LineLanguage = 'en',
): string {
  const short = written(draft, new Writer(context, language, false));
  const read = readLine(short, context);
  const isClear = read.ok && read.value.length === 1;
  if (isClear && canonicalText(read.value[0]) === canonicalText(draft)) return short;
  return written(draft, new Writer(context, language, true));
}

function written(draft: LineDraft, write: Writer): string {
  const words = [write.phrase(data.verbWords[draft.kind]), ...write.body(draft)];
  const ownDay = write.ownDay(draft);
  if (draft.date !== ownDay) words.push(draft.date);
  const tail = 'reason' in draft ? draft.reason : draft.note;
  return `${words.join(' ')}${tail === undefined || tail === '' ? '' : `: ${tail}`}`;
}

const AMOUNTS = ['float', 'cash', 'cards', 'cheques', 'paidout'] as const;

class Writer {
  readonly #context: LineContext;
  readonly #language: data.LineLanguage;
  readonly #index: NameIndex;
  /** Every name gets the word of its list, because an id alone may be a word of the line. */
  readonly #isCareful: boolean;

  constructor(context: LineContext, language: data.LineLanguage, isCareful: boolean) {
    this.#context = context;
    this.#isCareful = isCareful;
    this.#language = language;
    this.#index = new NameIndex(context.names);
  }

  phrase(phrases: Parameters<typeof data.phraseIn>[0]): string {
    return data.phraseIn(phrases, this.#language);
  }

  /** The day a line of this record has without saying one. */
  ownDay(draft: LineDraft): string {
    const stall = draft.kind === 'stall-close' ? draft.stall : '';
    return this.#index.known('stall', stall)?.day ?? this.#context.today;
  }

  body(draft: LineDraft): string[] {
    switch (draft.kind) {
      case 'handover':
      case 'return':
      case 'order': {
        const slip = draft.kind === 'handover' ? this.#slip(draft) : [];
        return [this.#name('seller', draft.seller), ...this.#goods(draft.lines), ...slip];
      }
      case 'pass':
        return [
          ...this.#goods(draft.lines),
          ...this.#way('from', 'seller', draft.from),
          ...this.#way('to', 'seller', draft.to),
        ];
      case 'count':
      case 'exchange':
      case 'found':
        return this.#goods(draft.lines);
      case 'delivery':
      case 'supply-order':
        return [...this.#goods(draft.lines), ...this.#slip(draft)];
      case 'swap-in':
      case 'swap-out':
        return [
          ...this.#goods(draft.lines),
          ...this.#way(draft.kind === 'swap-in' ? 'from' : 'to', 'neighbour', draft.neighbour),
          ...this.#slip(draft),
        ];
      case 'gift': {
        const seller = draft.seller === undefined ? [] : [this.#name('seller', draft.seller)];
        return [...seller, ...this.#goods(draft.lines), this.phrase(data.placeWords[draft.from])];
      }
      case 'loss':
        return this.#lost(draft);
      case 'stall-close':
        return this.#stall(draft);
      default:
        return this.#moved(draft);
    }
  }

  #way(way: 'from' | 'to', of: NameClass, id: string): string[] {
    return [this.phrase(data.wayWords[way]), this.#name(of, id)];
  }

  #lost({ lines, seller = '', cents = 0 }: LineDraft<'loss'>): string[] {
    return lines === undefined
      ? [this.#name('seller', seller), this.#money(cents)]
      : this.#goods(lines);
  }

  #moved(
    draft: LineDraft<
      'payment' | 'refund' | 'deposit' | 'card-settle' | 'debit' | 'bank-fee' | 'settle'
    >,
  ): string[] {
    switch (draft.kind) {
      case 'payment':
        return [...this.#paid(draft), ...this.#receipt(draft.receipt)];
      case 'refund':
        return this.#paid(draft);
      case 'deposit':
        return [this.#money(draft.cents), ...this.#slip(draft)];
      case 'card-settle':
        return [
          this.#money(draft.cents),
          ...this.#labelled('fee', draft.fee),
          this.phrase(data.placeWords[draft.to]),
        ];
      case 'debit':
        return [this.#money(draft.cents), ...this.#labelled('announced', draft.announced)];
      case 'bank-fee':
        return [this.#money(draft.cents)];
      case 'settle':
        return [this.#money(draft.proceeds)];
    }
  }

  #paid({ seller, cents, tender }: LineDraft<'payment' | 'refund'>): string[] {
    return [
      this.#name('seller', seller),
      this.#money(cents),
      this.phrase(data.tenderWords[tender]),
    ];
  }

  #receipt(receipt: string | undefined): string[] {
    if ((receipt ?? '') === this.#context.receipt) return [];
    if (receipt === undefined) return [this.phrase(data.noReceiptWords)];
    return [this.phrase(data.textWords.receipt), receipt];
  }

  #stall(draft: LineDraft<'stall-close'>): string[] {
    const section = (part: 'out' | 'back' | 'damaged', lines: Lines) =>
      part !== 'out' && Object.keys(lines).length === 0
        ? []
        : [this.phrase(data.sectionWords[part]), ...this.#goods(lines)];
    return [
      this.#name('stall', draft.stall),
      ...section('out', draft.out),
      ...section('back', draft.back),
      ...section('damaged', draft.damaged ?? {}),
      ...AMOUNTS.flatMap((label) =>
        label === 'cash' || (draft[label] ?? 0) > 0 ? this.#labelled(label, draft[label]) : [],
      ),
    ];
  }

  #goods(lines: Lines): string[] {
    return Object.keys(lines).flatMap((product) => [
      String(lines[product] ?? 0),
      this.#name('product', product),
    ]);
  }

  #slip({ slip }: { readonly slip?: string }): string[] {
    return slip === undefined ? [] : [this.phrase(data.textWords.slip), slip];
  }

  #labelled(label: keyof typeof data.amountWords, minor: number | undefined): string[] {
    return minor === undefined ? [] : [this.phrase(data.amountWords[label]), this.#money(minor)];
  }

  /** `40.50`: decimals are always written, so that no mark can be taken for thousands. */
  #money(minor: number): string {
    const digits = minorDigits(this.#context.currency);
    const text = String(minor).padStart(digits + 1, '0');
    const cut = text.length - digits;
    return digits === 0 ? text : `${text.slice(0, cut)}.${text.slice(cut)}`;
  }

  #name(of: NameClass, id: string): string {
    return this.#isCareful ? `${this.phrase(data.classWords[of])} ${id}` : id;
  }
}
