import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Lines } from '../../records/fields.ts';
import type { NameIndex } from './known-names.ts';
import type { LinePlace } from './line-frames.ts';
import type { SaidGoods } from './line-goods.ts';
import type { LineDraft, LineKind } from './line-kind.ts';
import { type LineParts, missing } from './line-parts.ts';
import type { Section } from './line-pieces.ts';
import type { LineTrouble } from './line-trouble.ts';

/** What the reader asks of a book besides its names. */
export interface LineBook {
  /** The day that counts as today (`YYYY-MM-DD`). */
  readonly today: string;
  /** ISO 4217 code. */
  readonly currency: string;
  /** The number a payment gets where the line says none; empty where it gets none. */
  readonly receipt: string;
  /** Units a case of a product holds on a day. */
  caseUnits(product: string, day: string): number;
  /** Minor units that a seller has still to pay; below zero in credit. */
  owed(seller: string): number;
}

export interface Drafts {
  readonly drafts: readonly LineDraft[];
  /** Why a choice of names made no record; told only where none did. */
  readonly troubles: readonly LineTrouble[];
  readonly isCut: boolean;
}

/** One choice among all that a line may mean. */
interface Chosen {
  readonly sellers: readonly string[];
  readonly other: string;
  readonly date: string;
  readonly place: LinePlace | undefined;
  readonly products: readonly string[];
}

/** More choices than a person would look through; they are then told to write more of the name. */
export const CHOICES_MAX = 12;

/** Every record that the parts may mean. @param tail what stands after the colon */
export function draftsOf(
  kind: LineKind,
  parts: LineParts,
  tail: string,
  book: LineBook,
  index: NameIndex,
): Drafts {
  const drafts: LineDraft[] = [];
  const troubles: LineTrouble[] = [];
  const goods = [...parts.goods, ...[...parts.sections.values()].flat()];
  const lists: (readonly string[])[] = [
    ...parts.sellers,
    otherOf(parts, index),
    parts.days ?? [''],
    placesOf(kind, parts),
    ...goods.map(({ products }) => products),
  ];
  const choices = combinations(lists, CHOICES_MAX + 1);
  for (const choice of choices.slice(0, CHOICES_MAX)) {
    const chosen = chosenOf(choice, parts, book, index);
    const made = draft(kind, parts, chosen, tail, book);
    if ('name' in made) troubles.push(made);
    else drafts.push(made);
  }
  return { drafts, troubles, isCut: choices.length > CHOICES_MAX };
}

/** Of several stalls the ones on the day that was said. */
function otherOf({ other = [''], days = [] }: LineParts, index: NameIndex): readonly string[] {
  const onDay = other.filter((id) => days.includes(index.known('stall', id)?.day ?? ''));
  return onDay.length > 0 ? onDay : other;
}

/** Where gifts come from and payouts arrive is asked where it is not said. */
function placesOf(kind: LineKind, { place }: LineParts): readonly string[] {
  if (place !== undefined) return [place];
  if (kind === 'gift') return ['stockroom', 'supplier'];
  return kind === 'card-settle' ? ['bank', 'supplier'] : [''];
}

function chosenOf(
  choice: readonly string[],
  parts: LineParts,
  book: LineBook,
  index: NameIndex,
): Chosen {
  const sellers = choice.slice(0, parts.sellers.length);
  const [other = '', day = '', place = '', ...products] = choice.slice(parts.sellers.length);
  const ownDay = index.known('stall', other)?.day ?? book.today;
  const date = day === '' ? ownDay : day;
  const at = place === 'supplier' || place === 'stockroom' || place === 'bank' ? place : undefined;
  return { sellers, other, date, place: at, products };
}

function draft(
  kind: LineKind,
  parts: LineParts,
  chosen: Chosen,
  tail: string,
  book: LineBook,
): LineDraft | LineTrouble {
  const goods = linesOf(parts.goods, chosen.products, chosen.date, book);
  if (!goods.ok) return goods.refusal;
  const lines = { ...goods.value };
  switch (kind) {
    case 'loss':
      return lossDraft(parts, chosen, lines, tail);
    case 'stall-close':
      return stallDraft(parts, chosen, tail, book);
    case 'payment':
    case 'refund':
    case 'deposit':
    case 'card-settle':
    case 'debit':
    case 'bank-fee':
    case 'settle':
      return moneyDraft(kind, parts, chosen, tail, book);
    default:
      return goodsDraft(kind, parts, chosen, lines, tail);
  }
}

type GoodsKind = Exclude<LineKind, MoneyKind | 'loss' | 'stall-close'>;

function goodsDraft(
  kind: GoodsKind,
  parts: LineParts,
  { date, other, place, sellers }: Chosen,
  lines: Record<string, number>,
  tail: string,
): LineDraft | LineTrouble {
  const [seller = '', second = ''] = sellers;
  const slip = textField(parts, 'slip');
  const note = tail === '' ? {} : { note: tail };
  switch (kind) {
    case 'handover':
      return { kind, date, seller, lines, ...slip, ...note };
    case 'return':
    case 'order':
      return { kind, date, seller, lines, ...note };
    case 'pass':
      if (seller === second) return missing('two sellers, from whom and to whom');
      return { kind, date, from: seller, to: second, lines, ...note };
    case 'count':
    case 'exchange':
      return { kind, date, lines, ...note };
    case 'delivery':
    case 'supply-order':
      return { kind, date, lines, ...slip, ...note };
    case 'swap-in':
    case 'swap-out':
      return { kind, date, neighbour: other, lines, ...slip, ...note };
    case 'gift': {
      const from = place === 'supplier' ? 'supplier' : 'stockroom';
      return { kind, date, from, lines, ...(seller === '' ? {} : { seller }), ...note };
    }
    case 'found':
      return tail === '' ? NO_REASON : { kind, date, lines, reason: tail };
  }
}

type MoneyKind = 'payment' | 'refund' | 'deposit' | 'card-settle' | 'debit' | 'bank-fee' | 'settle';

function moneyDraft(
  kind: MoneyKind,
  parts: LineParts,
  { sellers, date, place }: Chosen,
  tail: string,
  book: LineBook,
): LineDraft | LineTrouble {
  const seller = sellers[0] ?? '';
  const owed = kind === 'refund' ? 0 - book.owed(seller) : book.owed(seller);
  const cents = parts.amount === 'all' ? owed : (parts.amount ?? 0);
  if (cents <= 0) return missing('an amount: nothing is still to pay');
  const note = tail === '' ? {} : { note: tail };
  const tender = parts.tender ?? 'cash';
  switch (kind) {
    case 'payment': {
      const receipt = parts.texts.get('receipt') ?? book.receipt;
      const numbered = receipt === '' ? {} : { receipt };
      return { kind, date, seller, tender, cents, ...numbered, ...note };
    }
    case 'refund':
      return { kind, date, seller, cents, tender, ...note };
    case 'deposit':
      return { kind, date, cents, ...textField(parts, 'slip'), ...note };
    case 'card-settle': {
      const fee = parts.amounts.get('fee') ?? 0;
      return { kind, date, cents, fee, to: place === 'supplier' ? 'supplier' : 'bank', ...note };
    }
    case 'debit': {
      const announced = parts.amounts.get('announced');
      return { kind, date, cents, ...(announced === undefined ? {} : { announced }), ...note };
    }
    case 'bank-fee':
      return { kind, date, cents, ...note };
    case 'settle':
      return { kind, date, proceeds: cents, ...note };
  }
}

const NO_REASON = missing('a reason after a colon, like “: jar broken”');

function lossDraft(
  parts: LineParts,
  { sellers, date }: Chosen,
  lines: Lines,
  tail: string,
): LineDraft | LineTrouble {
  const seller = sellers[0];
  if (parts.goods.length > 0 && seller !== undefined) {
    return missing('goods of the stockroom, or a seller with an amount, not both');
  }
  if (parts.goods.length === 0 && seller === undefined) {
    return missing('the seller who will not pay the amount, or goods');
  }
  if (tail === '') return NO_REASON;
  if (seller === undefined) return { kind: 'loss', date, lines: { ...lines }, reason: tail };
  const cents = typeof parts.amount === 'number' ? parts.amount : 0;
  return { kind: 'loss', date, seller, cents, reason: tail };
}

const COUNTED = ['cash', 'cards', 'cheques'] as const;

function stallDraft(
  parts: LineParts,
  { other, date, products }: Chosen,
  tail: string,
  book: LineBook,
): LineDraft | LineTrouble {
  const amount = (label: 'float' | 'cash' | 'cards' | 'cheques' | 'paidout') =>
    parts.amounts.get(label) ?? 0;
  const isCounted = COUNTED.some((label) => parts.amounts.has(label));
  if (!isCounted) return missing('the money that was counted, like cash 65');
  const paidout = amount('paidout');
  if (paidout > 0 && tail === '') return missing('what cash was spent on, after a colon');
  const found = new Map<Section, Lines>();
  let taken = 0;
  for (const [part, goods] of parts.sections) {
    const own = linesOf(goods, products.slice(taken, taken + goods.length), date, book);
    if (!own.ok) return own.refusal;
    found.set(part, own.value);
    taken += goods.length;
  }
  const damaged = found.get('damaged') ?? {};
  return {
    kind: 'stall-close',
    date,
    stall: other,
    out: { ...takenOut(found.get('out') ?? found.get('sold') ?? {}, found, damaged) },
    back: { ...found.get('back') },
    ...(Object.keys(damaged).length === 0 ? {} : { damaged: { ...damaged } }),
    float: amount('float'),
    cash: amount('cash'),
    cards: amount('cards'),
    cheques: amount('cheques'),
    ...(paidout === 0 ? {} : { paidout }),
    ...(tail === '' ? {} : { note: tail }),
  };
}

/** Where only what was sold is said, that and what was damaged went out. */
function takenOut(out: Lines, found: ReadonlyMap<Section, Lines>, damaged: Lines): Lines {
  if (!found.has('sold')) return out;
  const all: Record<string, number> = { ...out };
  for (const product in damaged) all[product] = (all[product] ?? 0) + (damaged[product] ?? 0);
  return all;
}

/** Units by product; cases as they are packed on that day. */
function linesOf(
  goods: readonly SaidGoods[],
  products: readonly string[],
  date: string,
  book: LineBook,
): Outcome<Lines, LineTrouble> {
  const lines: Record<string, number> = Object.create(null);
  for (const [at, { cases, singles, said }] of goods.entries()) {
    const product = products[at] ?? '';
    const size = cases === 0 ? 1 : book.caseUnits(product, date);
    const units = (lines[product] ?? 0) + cases * size + singles;
    if (!Number.isSafeInteger(units)) {
      return refused({ name: 'number_does_not_fit', said, wanted: 'a smaller number' });
    }
    lines[product] = units;
  }
  return done(lines);
}

function textField(parts: LineParts, label: 'slip'): { readonly slip?: string } {
  const text = parts.texts.get(label) ?? '';
  return text === '' ? {} : { [label]: text };
}

/** Every choice of one from each list, the first lists turning slowest; at most so many. */
function combinations(lists: readonly (readonly string[])[], most: number): string[][] {
  let found: string[][] = [[]];
  for (const list of lists) {
    found = found.flatMap((begun) => list.map((one) => [...begun, one])).slice(0, most);
  }
  return found;
}
