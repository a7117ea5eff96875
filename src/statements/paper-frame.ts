import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import type { Say } from '../words/say.ts';
import { joined } from './joined.ts';
import type { Paper } from './paper.ts';
import { type PaperWords, paperWords } from './paper-words.ts';
import { userText } from './user-text.ts';

/** What a paper needs beside the book: core rooms read no clock and know no group name. */
export interface PaperContext {
  /** The group's name as printed. */
  readonly group: string;
  /** The day the paper is made for (`YYYY-MM-DD`); records up to it count. */
  readonly asAt: string;
  /** Whom to ask about a paper: someone other than the treasurer. */
  readonly ask?: string;
  /** The words of the first of these languages (BCP 47 tags) that there are words in. */
  readonly says: Says;
}

export type Says = (...wanted: readonly (string | undefined)[]) => Say;

/** What papers of a book say of its group: from the season, or the book's short name. */
export function paperContext(
  ledger: Ledger,
  book: { group: string },
  asAt: string,
  says: Says,
): PaperContext {
  const { group = book.group, ask } = ledger.setup.season ?? {};
  return { group, asAt, says, ...(ask === undefined ? {} : { ask }) };
}

/** The id of the family that answers for a seller. */
export function familyOfSeller(ledger: Ledger, seller: string): string | undefined {
  return ledger.setup.sellers.get(seller)?.family;
}

/**
 * Names, money and days of one book in the words of one language: that of the family a paper is
 * for, else the season's own, else English.
 */
export class PaperTexts {
  readonly words: PaperWords;
  readonly say: Say;
  readonly #ledger: Ledger;
  readonly #context: PaperContext;

  /** @param family the id of the family that reads it, where it is for one */
  constructor(ledger: Ledger, context: PaperContext, family?: string) {
    const { families, season } = ledger.setup;
    this.say = context.says(families.get(family ?? '')?.language, season?.language);
    this.words = paperWords(this.say);
    this.#ledger = ledger;
    this.#context = context;
  }

  money(minor: number): string {
    return this.say.money(minor, this.#ledger.setup.season?.currency ?? '');
  }

  units(units: number): string {
    return this.say.units(units);
  }

  day(day: string): string {
    return this.say.day(day);
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
    const { say } = this;
    const named = products.map(
      (product) => say.as('goods')`${lines[product] ?? 0} ${this.product(product)}`,
    );
    return joined(named, say);
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
      language: this.say.language.tag,
      title,
      over: this.over,
      foot: `${group} · ${title} · ${this.asAt}`,
      pageOf: this.words.pageOf,
    };
  }
}
