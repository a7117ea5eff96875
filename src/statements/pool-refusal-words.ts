import { unreachable } from '../base/assert.ts';
import type { PoolRefusal } from '../questions/share/pool-share.ts';

/** Why a pool cannot be shared out, and what to do. */
export function poolRefusalWords(refusal: PoolRefusal): string {
  switch (refusal.kind) {
    case 'no_such_pool':
      return `there is no pool ${refusal.pool}; wanted post, gift or stall:<stall> of the book`;
    case 'nothing_to_share':
      return `the pool ${refusal.pool} is empty: nothing is waiting to be shared`;
    case 'shared_too_much':
      return (
        `more ${refusal.product} was shared out of ${refusal.pool} than came in; ` +
        'correct that share-out first'
      );
    case 'no_sellers':
      return 'there is no active seller to share with; set one up first';
    default:
      return unreachable(refusal);
  }
}
