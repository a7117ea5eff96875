import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import { dayText } from './day-text.ts';
import { moneyText, unitsText } from './money-text.ts';
import type { Paper } from './paper.ts';
import { userText } from './user-text.ts';
import { type Words, wordsEn } from './words-en.ts';

/** What a paper needs beside the book: core rooms read no clock and know no group name. */
export interface PaperContext {
  /** The group's name as printed. */
  readonly group: string;
  /** The day the paper is made for (`YYYY-MM-DD`); records up to it count. */
  readonly asAt: string;
  /** Whom to ask about a paper: someone other than the treasurer. */
  readonly ask?: string;
  readonly words?: Words;
}

/** What papers of a book say of its group: from the season, or the book's short name. */
export function paperContext(ledger: Ledger, book: { group: string }, asAt: string): PaperContext {
  const { group = book.group, ask } = ledger.setup.season ?? {};
  return { group, asAt, ...(ask === undefined ? {} : { ask }) };
}

/** Names, money and days of one book in the words of one language. */
export class PaperTexts {
  readonly words: Words;
  readonly #ledger: Ledger;
  readonly #context: PaperContext;

  constructor(ledger: Ledger, context: PaperContext) {
    this.words = context.words ?? wordsEn;
    this.#ledger = ledger;
    this.#context = context;
  }

  money(minor: number): string {
    return moneyText(minor, this.#ledger.setup.season?.currency ?? '');
  }

  units(units: number): string {
    return unitsText(units);
  }

  day(day: string): string {
    return dayText(day, this.words);
  }

  get asAt(): string {
    return this.day(this.#context.asAt);
  }

  seller(id: string): string {
    return userText(this.#ledger.setup.sellers.get(id)?.name ?? id);
  }

  /** The adult who answers for the account of a seller. */
  familyOf(seller: string): string {
    const family = this.#ledger.setup.sellers.get(seller)?.family ?? '';
    return userText(this.#ledger.setup.families.get(family)?.name ?? family);
  }

  product(id: string): string {
    return userText(this.#ledger.setup.products.get(id)?.name ?? id);
  }

  /** `5 Wildflower honey, 2 Plum jam`, in the order of product ids. */
  goods(lines: Lines): string {
    const products = Object.keys(lines).sort();
    if (products.length === 0) return this.words.none;
    return products
      .map((product) => `${unitsText(lines[product] ?? 0)} ${this.product(product)}`)
      .join(', ');
  }

  /** What is still to pay, or in credit, as words with a positive amount. */
  balance(minor: number): string {
    return this.words.balance(this.money(Math.abs(minor)), minor >= 0);
  }

  /** The group and the season. */
  get over(): string {
    const group = userText(this.#context.group);
    const season = userText(this.#ledger.setup.season?.name ?? '');
    return [group, season].filter((text) => text !== '').join(' · ');
  }

  /** The parts that all papers have. */
  frame(title: string, fileName: string): Omit<Paper, 'facts' | 'blocks'> {
    const group = userText(this.#context.group);
    return {
      fileName,
      language: this.words.language,
      title,
      over: this.over,
      foot: `${group} · ${title} · ${this.asAt}`,
      pageOf: this.words.pageOf,
    };
  }
}
