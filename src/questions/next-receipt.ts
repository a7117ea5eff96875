import type { BookRecord } from '../records/record.ts';

/**
 * The number for the next receipt: one above the highest given so far, written like it. A removed
 * payment keeps its number, so that the series has no gap and no double.
 *
 * @param records every record that may have a number, also those that do not count
 * @param series the prefix of a device's own series: two devices without signal then never give the
 *   same number. Without it, all numbers are one series.
 */
export function nextReceipt(records: Iterable<BookRecord>, series?: string): string {
  let highest = 0n;
  let written = series === undefined ? { prefix: '', digits: 1 } : { prefix: series, digits: 3 };
  for (const record of records) {
    if (record.kind !== 'payment' || record.receipt === undefined) continue;
    const parts = /^(.*?)(\d{1,15})$/u.exec(record.receipt.trim());
    if (series !== undefined && parts?.[1] !== series) continue;
    const number = BigInt(parts?.[2] ?? 0);
    if (number <= highest) continue;
    highest = number;
    written = { prefix: parts?.[1] ?? '', digits: parts?.[2]?.length ?? 1 };
  }
  return `${written.prefix}${String(highest + 1n).padStart(written.digits, '0')}`;
}
