import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { poolWeights, type Weighting } from './pool-weights.ts';
import { seasonFairness } from './season-fairness.ts';
import type { ShareInput, ShareMethod } from './share-out.ts';

/** The share-out that a pool of the book waits for, by the group's rule or another. */
export interface PoolShare extends ShareInput {
  readonly by: Weighting;
  readonly method: ShareMethod;
}

export type PoolRefusal =
  | { readonly kind: 'no_such_pool'; readonly pool: string }
  | { readonly kind: 'nothing_to_share'; readonly pool: string }
  | { readonly kind: 'shared_too_much'; readonly pool: string; readonly product: string }
  | { readonly kind: 'no_sellers' };

export interface PoolChoice {
  readonly by?: Weighting | undefined;
  readonly method?: ShareMethod | undefined;
}

/** @param pool `stall:<stall>`, `post` or `gift` */
export function poolShare(
  ledger: Ledger,
  pool: string,
  choice: PoolChoice = {},
): Outcome<PoolShare, PoolRefusal> {
  const { setup } = ledger;
  const stall = pool.startsWith('stall:') ? pool.slice('stall:'.length) : undefined;
  const isKnown = pool === 'post' || pool === 'gift' || setup.stalls.has(stall ?? '');
  if (!isKnown) return refused({ kind: 'no_such_pool', pool });
  const products = ledger.balances.linesOf('credit', `pool:${pool}`);
  const entries = Object.entries(products);
  if (entries.length === 0) return refused({ kind: 'nothing_to_share', pool });
  const [negative] = entries.find(([, units]) => units < 0) ?? [];
  if (negative !== undefined) {
    return refused({ kind: 'shared_too_much', pool, product: negative });
  }
  const { by, weights } = poolWeights(ledger, pool, choice.by);
  if (weights.length === 0) return refused({ kind: 'no_sellers' });
  const fairness = seasonFairness(ledger).sellers;
  const carried = new Map(fairness.map((one) => [one.seller, one.carried]));
  const sharedBefore = fairness.reduce((sum, { credited }) => sum + credited, 0);
  const sellers = weights.map((each) => ({ ...each, carried: carried.get(each.seller) }));
  const method = choice.method ?? setup.season?.sharing?.method ?? 'remainder';
  return done({ products, sellers, by, method, turn: sharedBefore });
}
