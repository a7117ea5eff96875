import type { Ledger } from '../ledger/ledger.ts';
import { priceOfLines } from '../ledger/posting.ts';
import type { Lines } from '../records/fields.ts';

/** Units of all products together, and their price in minor units on a day. */
export interface LinesValue {
  readonly units: number;
  readonly minor: number;
}

/** What lines add up to at the prices of a day. */
export function valueOfLines(ledger: Ledger, lines: Lines, day: string): LinesValue {
  let units = 0;
  for (const product in lines) units += lines[product] ?? 0;
  return { units, minor: priceOfLines(lines, day, ledger) };
}
