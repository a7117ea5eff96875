import type { ErrorAnswer } from '../contract/api.ts';
import { Ledger } from '../ledger/ledger.ts';
import { closingList } from '../questions/closing-list.ts';
import type { BookRecord } from '../records/record.ts';
import { mayAppend } from '../rules/may-append.ts';

/**
 * The server's rules, asked on the device before anything is kept: without signal, a record that
 * cannot be taken is then refused while its form is still open, not days later. A chunk of its own,
 * as no first screen needs it.
 */
export function refusalHere(
  ledger: Ledger,
  records: readonly BookRecord[],
  today: string,
): ErrorAnswer | undefined {
  const so = records.length > 1 ? Ledger.of(ledger.standing.records()) : ledger;
  for (const [at, record] of records.entries()) {
    const isReadyToClose = (): boolean => closingList(so, today).ready;
    const refusal = mayAppend(so, record, { isReadyToClose });
    if (refusal !== undefined) return { name: refusal.name, message: refusal.message };
    if (at + 1 < records.length) so.add(record);
  }
  return undefined;
}
