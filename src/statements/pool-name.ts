import type { Setup } from '../ledger/setup.ts';
import { stallName } from './account-name.ts';

/** A pool as people know it. @param pool `stall:<stall>`, `post` or `gift` */
export function poolName(setup: Setup, pool: string): string {
  if (pool === 'post') return 'Posted orders';
  if (pool === 'gift') return 'Gift units';
  return stallName(setup, pool.slice('stall:'.length));
}
