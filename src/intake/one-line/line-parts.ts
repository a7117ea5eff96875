import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { AmountLabel, Frame, LinePlace, TextLabel } from './line-frames.ts';
import { pairGoods, type SaidGoods } from './line-goods.ts';
import type { Piece, Section } from './line-pieces.ts';
import type { LineTrouble } from './line-trouble.ts';

/** What a line says, part by part; names and days may still be one of several. */
export interface LineParts {
  readonly sellers: readonly (readonly string[])[];
  readonly other: readonly string[] | undefined;
  readonly goods: readonly SaidGoods[];
  /** A stall's goods by part. */
  readonly sections: ReadonlyMap<Section, readonly SaidGoods[]>;
  readonly amount: number | 'all' | undefined;
  readonly tender: 'cash' | 'cheque' | 'card' | undefined;
  readonly days: readonly string[] | undefined;
  readonly place: LinePlace | undefined;
  readonly texts: ReadonlyMap<TextLabel, string>;
  readonly amounts: ReadonlyMap<AmountLabel, number>;
}

type Read<T> = Outcome<T, LineTrouble>;

/** Sorts the pieces of one path into parts; the kind's frame says what must be there. */
export function partsOf(
  said: readonly Piece[],
  frame: Frame,
  way: 'from' | 'to' | undefined,
): Read<LineParts> {
  const pieces = said.filter(({ is }) => is !== 'filler' && is !== 'verb');
  const twice = saidTwice(pieces);
  if (twice !== undefined) return refused(extra(twice.said));
  const sellers = sellersOf(pieces, frame);
  if (!sellers.ok) return sellers;
  const other = otherOf(pieces, frame, way);
  if (!other.ok) return other;
  const isAmount = frame.goods === undefined || (frame.goods === 'maybe' && !hasProduct(pieces));
  const amount = isAmount ? amountOf(pieces, frame) : done(undefined);
  if (!amount.ok) return amount;
  const sections = frame.goods === 'parts' ? sectionsOf(pieces) : done(new Map());
  if (!sections.ok) return sections;
  const goods =
    isAmount || frame.goods === 'parts' ? done<SaidGoods[]>([]) : someGoods(pieces, frame);
  if (!goods.ok) return goods;
  const day = pieces.find((piece) => piece.is === 'day');
  const tender = pieces.find((piece) => piece.is === 'tender');
  const place = pieces.find((piece) => piece.is === 'place');
  return done({
    sellers: sellers.value,
    other: other.value,
    goods: goods.value,
    sections: sections.value,
    amount: amount.value,
    tender: tender?.tender,
    days: day?.days,
    place: place?.place,
    texts: new Map(pieces.flatMap((p) => (p.is === 'text' ? [[p.label, p.text] as const] : []))),
    amounts: new Map(
      pieces.flatMap((p) => (p.is === 'labelled' ? [[p.label, p.minor] as const] : [])),
    ),
  });
}

/** The second piece of a sort that a record has only one of. */
function saidTwice(pieces: readonly Piece[]): Piece | undefined {
  const seen = new Set<string>();
  for (const piece of pieces) {
    const key = onceKey(piece);
    if (key === undefined) continue;
    if (seen.has(key)) return piece;
    seen.add(key);
  }
  return undefined;
}

function onceKey(piece: Piece): string | undefined {
  switch (piece.is) {
    case 'day':
    case 'tender':
    case 'place':
    case 'all':
      return piece.is;
    case 'labelled':
    case 'text':
      return `${piece.is} ${piece.label}`;
    default:
      return undefined;
  }
}

/** One seller, or two in the order from whom, to whom. */
function sellersOf(pieces: readonly Piece[], { sellers }: Frame): Read<(readonly string[])[]> {
  const named = pieces.flatMap((piece, at) => {
    const before = pieces[at - 1];
    if (piece.is !== 'name' || piece.of !== 'seller') return [];
    return [{ piece, way: before?.is === 'way' ? before.way : undefined }];
  });
  const wanted = sellers === 'two' ? 2 : sellers === undefined ? 0 : 1;
  const [first, second] = named;
  if (named.length > wanted) return refused(extra(named.at(-1)?.piece.said ?? ''));
  if (named.length < wanted && sellers !== 'maybe') {
    return refused(missing(sellers === 'two' ? 'two sellers, from whom and to whom' : 'a seller'));
  }
  if (sellers === 'two') {
    const strayWay = pieces.find(
      (piece, at) => piece.is === 'way' && !isName(pieces[at + 1], 'seller'),
    );
    if (strayWay !== undefined) return refused(extra(strayWay.said));
    if (first?.way !== undefined && first.way === second?.way) {
      return refused(missing('one seller it goes from and one it goes to'));
    }
  }
  const isTurned = first?.way === 'to' || second?.way === 'from';
  const ids = named.map(({ piece }) => piece.ids);
  return done(isTurned ? ids.reverse() : ids);
}

function otherOf(
  pieces: readonly Piece[],
  { other }: Frame,
  wantedWay: 'from' | 'to' | undefined,
): Read<readonly string[] | undefined> {
  if (other === undefined) return done(undefined);
  const at = pieces.findIndex((piece) => isName(piece, other));
  const named = pieces[at];
  if (named?.is !== 'name') {
    return refused(missing(other === 'stall' ? 'a stall of this season' : 'a neighbour group'));
  }
  const second = pieces.slice(at + 1).find((piece) => isName(piece, other));
  if (second !== undefined) return refused(extra(second.said));
  for (const [place, piece] of pieces.entries()) {
    if (piece.is !== 'way') continue;
    if (place + 1 !== at || piece.way !== wantedWay) return refused(extra(piece.said));
  }
  return done(named.ids);
}

function amountOf(pieces: readonly Piece[], { amount }: Frame): Read<number | 'all' | undefined> {
  const numbers = pieces.filter((piece) => piece.is === 'number');
  const hasAll = pieces.some(({ is }) => is === 'all');
  const unit = pieces.find(({ is }) => is === 'unit');
  if (unit !== undefined) return refused(extra(unit.said));
  if (hasAll && numbers.length === 0) return done('all');
  const [number, second] = numbers;
  if (second !== undefined || (hasAll && number !== undefined)) {
    return refused(extra((second ?? number)?.said ?? ''));
  }
  if (number === undefined) {
    const wanted = amount === 'maybe' ? 'goods with how many, or an amount' : AN_AMOUNT;
    return refused(missing(wanted));
  }
  if (number.minor === undefined || number.minor === 0) {
    return refused({ name: 'number_does_not_fit', said: number.said, wanted: AN_AMOUNT });
  }
  return done(number.minor);
}

const AN_AMOUNT = 'an amount, like 40 or 40.50';

function someGoods(pieces: readonly Piece[], frame: Frame): Read<SaidGoods[]> {
  const goods = pairGoods(pieces);
  if (!goods.ok) return goods;
  if (goods.value.length === 0) return refused(missing('goods and how many, like 12 honey'));
  if (frame.goods === 'zeros') return goods;
  const none = goods.value.find(({ cases, singles }) => cases === 0 && singles === 0);
  if (none === undefined) return goods;
  const wanted = 'a whole number of 1 or more';
  return refused({ name: 'number_does_not_fit', said: `0 ${none.said}`, wanted });
}

/** A stall's goods: what follows a part's word belongs to it. */
function sectionsOf(pieces: readonly Piece[]): Read<ReadonlyMap<Section, readonly SaidGoods[]>> {
  const parts = new Map<Section, Piece[]>();
  let part: Section | undefined;
  for (const piece of pieces) {
    if (piece.is === 'section') {
      if (parts.has(piece.part)) return refused(extra(piece.said));
      part = piece.part;
      parts.set(part, []);
    } else if (piece.is === 'number' || piece.is === 'unit' || isName(piece, 'product')) {
      if (part === undefined) return refused(missing('“sold”, or “out” and “back”, before goods'));
      parts.get(part)?.push(piece);
    }
  }
  const found = new Map<Section, readonly SaidGoods[]>();
  for (const [name, own] of parts) {
    const goods = pairGoods(own);
    if (!goods.ok) return goods;
    found.set(name, goods.value);
  }
  const said = [...found.values()].some((goods) => goods.length > 0);
  if (!said) return refused(missing('goods that were sold, like sold 12 honey'));
  if (found.has('sold') && found.size > (found.has('damaged') ? 2 : 1)) {
    return refused(missing('either what was sold, or what went out and came back'));
  }
  return done(found);
}

function hasProduct(pieces: readonly Piece[]): boolean {
  return pieces.some((piece) => isName(piece, 'product'));
}

function isName(piece: Piece | undefined, of: string): boolean {
  return piece?.is === 'name' && piece.of === of;
}

export function missing(wanted: string): LineTrouble {
  return { name: 'part_missing', said: '', wanted };
}

function extra(said: string): LineTrouble {
  return { name: 'word_does_not_belong', said, wanted: `a line without “${said}”` };
}
