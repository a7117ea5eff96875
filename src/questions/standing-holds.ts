import type { Ledger } from '../ledger/ledger.ts';
import type { RecordOf } from '../records/record.ts';

/** Stop-sales of a product (whole or by lot) that have not been lifted. */
export function standingHolds(ledger: Ledger, product: string): RecordOf<'hold'>[] {
  const holds = [...ledger.setup.holds.values()];
  return holds.filter((hold) => hold.product === product && hold.lifted !== true);
}
