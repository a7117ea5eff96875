import type { Ledger } from '../../ledger/ledger.ts';
import type { StallEntry } from '../../records/stall-entry.ts';

export interface SheetEntries {
  /** The lines of a stall's sheet from the book and from this phone. */
  readonly entries: readonly StallEntry[];
  /** Lines that only this phone has: to be handed in. */
  readonly onlyHere: readonly StallEntry[];
}

/**
 * What the phones of a stall wrote: handed in with records of the book, and kept on this phone.
 * A line that came in with a record which was removed counts nowhere, also not on its own phone.
 *
 * @param here the lines that this phone keeps itself
 */
export function sheetEntries(
  ledger: Ledger,
  stall: string,
  here: readonly StallEntry[],
): SheetEntries {
  const entries: StallEntry[] = [];
  const known = new Set<string>();
  for (const record of ledger.standing.records()) {
    if (record.kind !== 'count' || record.sheet?.stall !== stall) continue;
    for (const entry of record.sheet.entries) known.add(entry.id);
    if (ledger.standing.counts(record)) entries.push(...record.sheet.entries);
  }
  const once = new Map(here.map((entry) => [entry.id, entry]));
  const onlyHere = [...once.values()].filter(({ id }) => !known.has(id));
  return { entries: [...entries, ...onlyHere], onlyHere };
}
