import type { Ledger } from '../../ledger/ledger.ts';
import { minutesWorked } from './minutes-worked.ts';

/** How the weights of a share-out come about. */
export type Weighting = 'minutes' | 'even';

export interface PoolWeights {
  /** What the weights are: minutes worked, or 1 for each. */
  readonly by: Weighting;
  /** Sellers in the fixed order of their ids. */
  readonly weights: readonly { readonly seller: string; readonly weight: number }[];
}

/**
 * Weights of the sellers who share a pool. A stall's credit goes by minutes worked, or evenly to
 * those who worked where the group chose so; a pool that nobody worked for goes evenly to every
 * active seller.
 *
 * @param pool `stall:<stall>`, `post` or `gift`; @param by what to use in place of the group's rule
 */
export function poolWeights(ledger: Ledger, pool: string, by?: Weighting): PoolWeights {
  const { setup } = ledger;
  const wanted = by ?? setup.season?.sharing?.weights ?? 'minutes';
  const stall = pool.startsWith('stall:')
    ? setup.stalls.get(pool.slice('stall:'.length))
    : undefined;
  const worked = stall === undefined ? [] : [...minutesWorked(stall)];
  const present = worked.filter(([, minutes]) => minutes > 0).sort();
  if (present.length > 0) {
    const weights = present.map(([seller, minutes]) => ({
      seller,
      weight: wanted === 'minutes' ? minutes : 1,
    }));
    return { by: wanted, weights };
  }
  const active = [...setup.sellers.values()].filter((seller) => seller.active);
  return { by: 'even', weights: active.map(({ seller }) => ({ seller, weight: 1 })) };
}
