import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Piece } from './line-pieces.ts';
import type { LineTrouble } from './line-trouble.ts';

/** Goods as a line says them: which product (or several it may be), in cases and singles. */
export interface SaidGoods {
  readonly products: readonly string[];
  readonly cases: number;
  readonly singles: number;
  readonly said: string;
}

interface Quantity {
  readonly cases: number | undefined;
  readonly singles: number | undefined;
  readonly said: string;
}

type Atom =
  | { readonly quantity: Quantity }
  | { readonly products: readonly string[]; readonly said: string };

/**
 * Pairs numbers with products: `12 honey 6 jam`, `2 cases 3 honey`, or all the other way round,
 * `honey 12 jam 6`. A line that does both, or leaves one over, is not guessed at.
 */
export function pairGoods(pieces: readonly Piece[]): Outcome<SaidGoods[], LineTrouble> {
  const read = atomsOf(pieces);
  if (!read.ok) return read;
  const atoms = read.value;
  const isTurned = atoms[0] !== undefined && 'products' in atoms[0];
  const goods: SaidGoods[] = [];
  for (let at = 0; at < atoms.length; at += 2) {
    const [first, second] = isTurned ? [atoms[at + 1], atoms[at]] : [atoms[at], atoms[at + 1]];
    const quantity = first !== undefined && 'quantity' in first ? first.quantity : undefined;
    const named = second !== undefined && 'products' in second ? second : undefined;
    if (quantity === undefined || named === undefined) return refused(leftOver(first, second));
    const { cases = 0, singles = 0 } = quantity;
    goods.push({ products: named.products, cases, singles, said: named.said });
  }
  return done(goods);
}

function leftOver(first: Atom | undefined, second: Atom | undefined): LineTrouble {
  const named = [first, second].find((atom) => atom !== undefined && 'products' in atom);
  if (named !== undefined && 'products' in named) {
    return { name: 'part_missing', said: named.said, wanted: `how many of ${named.said}` };
  }
  const number = [first, second].find((atom) => atom !== undefined && 'quantity' in atom);
  const said = number !== undefined && 'quantity' in number ? number.quantity.said : '';
  return { name: 'part_missing', said, wanted: `which product ${said} is of` };
}

function atomsOf(pieces: readonly Piece[]): Outcome<Atom[], LineTrouble> {
  const atoms: Atom[] = [];
  let last: Quantity | undefined;
  for (const [at, piece] of pieces.entries()) {
    if (piece.is === 'name' && piece.of === 'product') {
      atoms.push({ products: piece.ids, said: piece.said });
      last = undefined;
    }
    if (piece.is === 'unit' && pieces[at - 1]?.is !== 'number') return refused(strayUnit(piece));
    if (piece.is !== 'number') continue;
    if (piece.units === undefined) return refused(notWhole(piece.said));
    const after = pieces[at + 1];
    const isCase = after?.is === 'unit' && after.unit === 'case';
    const quantity = added(last, isCase, piece.units, piece.said);
    if (quantity === undefined) return refused(strayNumber(piece.said));
    if (last !== undefined) atoms.pop();
    atoms.push({ quantity });
    last = quantity;
  }
  return done(atoms);
}

/** Cases may be followed by singles of the same product, and by nothing else. */
function added(
  last: Quantity | undefined,
  isCase: boolean,
  units: number,
  said: string,
): Quantity | undefined {
  if (last === undefined) {
    return isCase
      ? { cases: units, singles: undefined, said }
      : { cases: undefined, singles: units, said };
  }
  if (isCase || last.cases === undefined || last.singles !== undefined) return undefined;
  return { cases: last.cases, singles: units, said };
}

function strayUnit({ said }: Piece): LineTrouble {
  return { name: 'part_missing', said, wanted: `a number before ${said}` };
}

function strayNumber(said: string): LineTrouble {
  return { name: 'word_does_not_belong', said, wanted: 'one number for each product' };
}

export function notWhole(said: string): LineTrouble {
  return { name: 'number_does_not_fit', said, wanted: 'a whole number of units' };
}
