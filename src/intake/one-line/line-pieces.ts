import { minorDigits } from '../../base/currency.ts';
import { amountMinor, decimalMarkOf } from '../table/amount-text.ts';
import { type NameClass, type NameIndex, nameClasses } from './known-names.ts';
import { daysMeant } from './line-day.ts';
import type { AmountLabel, LinePlace, TextLabel } from './line-frames.ts';
import { type LineKind, lineKinds } from './line-kind.ts';
import type { Token } from './line-tokens.ts';
import * as data from './line-words.ts';

/** What a few words in a row may be. One span may be several of these; the kind decides. */
export type Meaning =
  | { readonly is: 'verb'; readonly kind: LineKind }
  | { readonly is: 'name'; readonly of: NameClass; readonly ids: readonly string[] }
  /** `units` is undefined for an amount that is no whole number, `minor` beyond safe integers. */
  | {
      readonly is: 'number';
      readonly units: number | undefined;
      readonly minor: number | undefined;
    }
  | { readonly is: 'all' }
  | { readonly is: 'unit'; readonly unit: 'case' | 'single' }
  | { readonly is: 'tender'; readonly tender: 'cash' | 'cheque' | 'card' }
  | { readonly is: 'day'; readonly days: readonly string[] }
  | { readonly is: 'labelled'; readonly label: AmountLabel; readonly minor: number }
  | { readonly is: 'text'; readonly label: TextLabel; readonly text: string }
  | { readonly is: 'way'; readonly way: 'from' | 'to' }
  | { readonly is: 'place'; readonly place: LinePlace }
  | { readonly is: 'section'; readonly part: Section }
  | { readonly is: 'filler' };

export type Section = 'out' | 'back' | 'damaged' | 'sold';

export type Piece = Meaning & {
  /** Words of the line it takes up. */
  readonly length: number;
  /** How unsure it is; of all ways to read a line, the ones that cost least count. */
  readonly cost: number;
  readonly said: string;
};

const SPAN_MAX = 6;
const FILLER_COST = 1;
const TURNED_COST = 1;
/** A product named “product”, or a seller “Cash”, comes after what the word is there for. */
const TAKEN_WORD_COST = 1;

const FIXED: ReadonlyMap<string, readonly Meaning[]> = fixedMeanings();
const AMOUNT_LABELS = labels(data.amountWords);
const TEXT_LABELS = labels(data.textWords);
const CLASS_LABELS = labels(data.classWords);
const TAKEN: ReadonlySet<string> = new Set([...knownWords(), ...CLASS_LABELS.keys()]);

/** Every piece that begins at a word of the line. */
export function piecesAt(
  tokens: readonly Token[],
  at: number,
  index: NameIndex,
  { today, currency }: { readonly today: string; readonly currency: string },
): Piece[] {
  const pieces: Piece[] = [];
  for (let length = 1; length <= SPAN_MAX && at + length <= tokens.length; length += 1) {
    const span = tokens.slice(at, at + length);
    const words = span.map(({ plain }) => plain);
    const said = span.map((token) => token.said).join(' ');
    const add = (meaning: Meaning, cost: number) => pieces.push({ ...meaning, length, cost, said });
    for (const meaning of FIXED.get(words.join(' ')) ?? []) {
      add(meaning, meaning.is === 'filler' ? FILLER_COST : 0);
    }
    for (const of of nameClasses) {
      const meant = index.meant(of, words);
      const isTaken = length === 1 && TAKEN.has(words[0] ?? '');
      const more = isTaken ? TAKEN_WORD_COST : 0;
      if (meant !== undefined) add({ is: 'name', of, ids: meant.ids }, meant.cost + more);
    }
    const days = daysMeant(words, today);
    if (days.length > 0) add({ is: 'day', days }, 0);
    for (const [meaning, cost] of labelled(span, words, index, currency)) add(meaning, cost);
    const number = length === 1 ? numberIn(said, currency) : undefined;
    if (number !== undefined) add(number, 0);
    if (length === 1 && isCurrency(said, currency)) add({ is: 'filler' }, 0);
  }
  return pieces;
}

/** A label with what it is about: `float 20`, `20 float`, `slip 77`, `seller jam`. */
function labelled(
  span: readonly Token[],
  words: readonly string[],
  index: NameIndex,
  currency: string,
): [Meaning, number][] {
  const found: [Meaning, number][] = [];
  const [before, last] = [words.slice(0, -1).join(' '), span.at(-1)];
  if (last === undefined || before === '') return found;
  for (const label of TEXT_LABELS.get(before) ?? []) {
    found.push([{ is: 'text', label, text: last.said }, 0]);
  }
  for (const of of CLASS_LABELS.get(before) ?? []) {
    const known = index.known(of, last.said);
    const ids = known === undefined ? index.meant(of, [last.plain])?.ids : [known.id];
    if (ids !== undefined) found.push([{ is: 'name', of, ids }, 0]);
  }
  const behind = numberIn(last.said, currency)?.minor;
  for (const label of AMOUNT_LABELS.get(before) ?? []) {
    if (behind !== undefined) found.push([{ is: 'labelled', label, minor: behind }, 0]);
  }
  const inFront = numberIn(span[0]?.said ?? '', currency)?.minor;
  for (const label of AMOUNT_LABELS.get(words.slice(1).join(' ')) ?? []) {
    if (inFront === undefined) continue;
    found.push([{ is: 'labelled', label, minor: inFront }, TURNED_COST]);
  }
  return found;
}

/** A number as units and as an amount of money: `12`, `1,200`, `40.50`, `$40`. */
function numberIn(said: string, currency: string): (Meaning & { is: 'number' }) | undefined {
  if (!/^\p{Sc}?\d[\d.,'’]*\p{Sc}?$/u.test(said)) return undefined;
  const isGrouped = /^\d{1,3}(?:[.,'’]\d{3})+$/u.test(said) && minorDigits(currency) !== 3;
  const plain = isGrouped ? said.replace(/\D/gu, '') : said;
  const units = /^\d+$/.test(plain) ? Number(plain) : Number.NaN;
  return {
    is: 'number',
    units: Number.isSafeInteger(units) ? units : undefined,
    minor: amountMinor(plain, currency, decimalMarkOf([plain])),
  };
}

function isCurrency(said: string, currency: string): boolean {
  return /^\p{Sc}$/u.test(said) || said.toUpperCase() === currency;
}

function fixedMeanings(): ReadonlyMap<string, readonly Meaning[]> {
  const found = new Map<string, Meaning[]>();
  const add = (phrases: Parameters<typeof data.phrasesOf>[0], meaning: Meaning) => {
    for (const phrase of data.phrasesOf(phrases)) {
      found.set(phrase, [...(found.get(phrase) ?? []), meaning]);
    }
  };
  for (const kind of lineKinds) add(data.verbWords[kind], { is: 'verb', kind });
  for (const tender of ['cash', 'cheque', 'card'] as const) {
    add(data.tenderWords[tender], { is: 'tender', tender });
  }
  for (const part of ['out', 'back', 'damaged', 'sold'] as const) {
    add(data.sectionWords[part], { is: 'section', part });
  }
  for (const place of ['supplier', 'stockroom', 'bank'] as const) {
    add(data.placeWords[place], { is: 'place', place });
  }
  for (const unit of ['case', 'single'] as const) add(data.unitWords[unit], { is: 'unit', unit });
  for (const way of ['from', 'to'] as const) add(data.wayWords[way], { is: 'way', way });
  add(data.allWords, { is: 'all' });
  add(data.noReceiptWords, { is: 'text', label: 'receipt', text: '' });
  add(data.fillerWords, { is: 'filler' });
  return found;
}

/** Phrases to the labels they are, in every language. */
function labels<L extends string>(
  rows: Readonly<Record<L, Parameters<typeof data.phrasesOf>[0]>>,
): ReadonlyMap<string, readonly L[]> {
  const found = new Map<string, L[]>();
  for (const label in rows) {
    for (const phrase of data.phrasesOf(rows[label])) {
      found.set(phrase, [...(found.get(phrase) ?? []), label]);
    }
  }
  return found;
}

/** Every single word that is known without a book, for saying which one was nearly written. */
export function knownWords(): string[] {
  const tables = [
    data.verbWords,
    data.tenderWords,
    data.amountWords,
    data.textWords,
    data.sectionWords,
    data.placeWords,
    data.unitWords,
  ];
  const phrases = [
    ...tables.flatMap((table) => Object.values(table).flatMap(data.phrasesOf)),
    ...[...data.dayWords, ...data.weekdayWords, ...data.monthWords].flatMap(data.phrasesOf),
  ];
  return [...new Set(phrases.flatMap((phrase) => phrase.split(' ')))];
}
