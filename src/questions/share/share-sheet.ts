import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Lines } from '../../records/fields.ts';
import { unitsOf } from '../../records/units-of.ts';
import { type ShareCheck, shareCheck } from '../share-check.ts';
import type { PoolShare } from './pool-share.ts';
import type { Weighting } from './pool-weights.ts';
import { type SharedOut, type ShareInput, type ShareMethod, shareOut } from './share-out.ts';

/** What a person has changed on a share-out sheet. */
export interface SheetChanges {
  /** Whole weights by seller in place of the pool's own; sellers not named have none. */
  readonly byHand?: Readonly<Record<string, number>> | undefined;
  /** Whole units by seller and product that stay as they are. */
  readonly locked: Readonly<Record<string, Lines>>;
  /** Sellers who are listed beside those with a weight. */
  readonly also?: readonly string[];
}

/** A share-out worked out around what a person fixed. */
export interface ShareSheet {
  readonly by: Weighting | 'hand';
  readonly method: ShareMethod;
  readonly input: ShareInput;
  readonly shared: SharedOut;
  /** In the pool, given, and not yet shared, by product. */
  readonly check: ShareCheck;
}

/** Why the rest cannot be shared around what was fixed. */
export type SheetRefusal =
  | {
      readonly kind: 'locked_too_much';
      readonly product: string;
      readonly locked: number;
      readonly pool: number;
    }
  | { readonly kind: 'no_weight' }
  | { readonly kind: 'weights_too_large' };

/** Exact shares are told apart by this many parts of a unit at most. */
const PARTS_MOST = 2 ** 50;

/** @param pool the share-out a pool waits for (see pool-share.ts) */
export function shareSheet(
  pool: PoolShare,
  changes: SheetChanges,
): Outcome<ShareSheet, SheetRefusal> {
  const input = sheetInput(pool, changes);
  const weight = input.sellers.reduce((sum, each) => sum + each.weight, 0);
  const units = Object.values(pool.products).reduce((sum, each) => sum + each, 0);
  if (weight === 0) return refused({ kind: 'no_weight' });
  if (weight * units > PARTS_MOST) return refused({ kind: 'weights_too_large' });
  const locked = shareCheck(pool.products, changes.locked);
  const over = locked.products.find(({ left }) => left < 0);
  if (over !== undefined) {
    const { product, given } = over;
    return refused({ kind: 'locked_too_much', product, locked: given, pool: over.pool });
  }
  const shared = shareOut(input);
  return done({
    by: changes.byHand === undefined ? pool.by : 'hand',
    method: pool.method,
    input,
    shared,
    check: shareCheck(pool.products, shared.lines),
  });
}

function sheetInput(pool: PoolShare, { byHand, locked, also = [] }: SheetChanges): ShareInput {
  const listed = new Set(pool.sellers.map(({ seller }) => seller));
  const others = also
    .filter((seller) => !listed.has(seller))
    .map((seller) => ({ seller, weight: 0, carried: undefined }));
  const sellers = [...pool.sellers, ...others].map((each) => ({
    ...each,
    weight: byHand === undefined ? each.weight : unitsOf(byHand, each.seller),
    locked: Object.hasOwn(locked, each.seller) ? locked[each.seller] : undefined,
  }));
  return { products: pool.products, sellers, method: pool.method, turn: pool.turn };
}
