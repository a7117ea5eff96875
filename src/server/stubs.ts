import type { Ledger } from '../ledger/ledger.ts';
import type { BookRecord } from '../records/record.ts';

/** Stands in for a room that is being built; goes away with it. */
export interface Refusal {
  readonly name: string;
  readonly message: string;
}

export function mayAppend(_ledger: Ledger, _record: BookRecord): Refusal | undefined {
  return undefined;
}
