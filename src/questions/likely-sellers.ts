import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { orderedAgainstTaken } from './ordered-against-taken.ts';

/** Why a seller is likely meant: still to pay, in credit, has goods out, ordered and not taken. */
export type LikelyFor = 'due' | 'credit' | 'goods' | 'orders';

export interface LikelySeller {
  readonly seller: string;
  readonly name: string;
  /** Minor units still to pay or in credit; units out or not yet taken over. */
  readonly size: number;
}

/** More would have to be searched through; the rest are in the list of all sellers. */
export const LIKELY_MAX = 12;

/**
 * The sellers that a new record is most likely about, by name, so that a person finds one without
 * reading all. Where there are more than LIKELY_MAX, those with the largest sizes.
 */
export function likelySellers(ledger: Ledger, wanted: LikelyFor): LikelySeller[] {
  const all = [...ledger.setup.sellers.values()].map(({ seller, name }) => ({
    seller,
    name,
    size: sizeOf(ledger, seller, wanted),
  }));
  return all
    .filter(({ size }) => size > 0)
    .sort((a, b) => b.size - a.size || byText(a.seller, b.seller))
    .slice(0, LIKELY_MAX)
    .sort((a, b) => byText(a.name, b.name) || byText(a.seller, b.seller));
}

function sizeOf(ledger: Ledger, seller: string, wanted: LikelyFor): number {
  switch (wanted) {
    case 'due':
      return ledger.balances.moneyOf(`owed:${seller}`);
    case 'credit':
      return 0 - ledger.balances.moneyOf(`owed:${seller}`);
    case 'goods':
      return ledger.balances.unitsOf('stock', `seller:${seller}`);
    case 'orders':
      return orderedAgainstTaken(ledger, [seller]).toHandOver;
  }
}
