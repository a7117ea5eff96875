import type { StallState } from '../../../questions/stall-settlement.ts';
import type { Mark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';

/** Where a stall stands, as its shape and its word. */
export const stallStates: Readonly<Record<StallState, { mark: Mark; word: string }>> = {
  planned: { mark: 'ahead', word: say`planned` },
  'not-settled': { mark: 'open', word: say`not settled` },
  'not-shared': { mark: 'open', word: say`not yet shared` },
  settled: { mark: 'done', word: say`settled` },
  shared: { mark: 'done', word: say`settled and shared` },
};
