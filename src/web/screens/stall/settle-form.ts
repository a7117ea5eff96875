import type { StallTyped } from './stall-typed.ts';

/** What every part of the settle sheet gets. */
export interface SettleForm {
  readonly typed: StallTyped;
  readonly onTyped: (typed: StallTyped) => void;
  readonly errorOf: (field: string) => string | undefined;
}
