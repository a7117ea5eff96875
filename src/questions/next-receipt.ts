import type { Ledger } from '../ledger/ledger.ts';

/**
 * The number for the next receipt: one above the highest given so far, written like it. A removed
 * payment keeps its number, so that the series has no gap and no double.
 */
export function nextReceipt(ledger: Ledger): string {
  let highest = 0n;
  let written = { prefix: '', digits: 1 };
  for (const record of ledger.standing.records()) {
    if (record.kind !== 'payment' || record.receipt === undefined) continue;
    const parts = /^(.*?)(\d{1,15})$/u.exec(record.receipt.trim());
    const number = BigInt(parts?.[2] ?? 0);
    if (number <= highest) continue;
    highest = number;
    written = { prefix: parts?.[1] ?? '', digits: parts?.[2]?.length ?? 1 };
  }
  return `${written.prefix}${String(highest + 1n).padStart(written.digits, '0')}`;
}
