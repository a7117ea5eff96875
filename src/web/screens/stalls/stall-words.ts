import type { StallState } from '../../../questions/stall-settlement.ts';
import type { Mark } from '../../parts/state-mark.tsx';

/** Where a stall stands, as its shape and its word. */
export const stallStates: Readonly<Record<StallState, { mark: Mark; word: string }>> = {
  planned: { mark: 'ahead', word: 'planned' },
  'not-settled': { mark: 'open', word: 'not settled' },
  'not-shared': { mark: 'open', word: 'not yet shared' },
  settled: { mark: 'done', word: 'settled' },
  shared: { mark: 'done', word: 'settled and shared' },
};
