import type { Setup } from '../ledger/setup.ts';
import type { Say } from '../words/say.ts';
import { stallName } from './account-name.ts';

/** A pool as people know it. @param pool `stall:<stall>`, `post` or `gift` */
export function poolName(setup: Setup, pool: string, say: Say): string {
  if (pool === 'post') return say`Posted orders`;
  if (pool === 'gift') return say`Gift units`;
  return stallName(setup, pool.slice('stall:'.length), say);
}
