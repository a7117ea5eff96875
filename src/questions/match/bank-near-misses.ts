import type { BankEntry } from './bank-entries.ts';
import { daysApart, isNear, type LineToMatch } from './bank-window.ts';
import { isSlipOfDigits } from './slip-of-digits.ts';

/** A line and a record that are most likely meant to be the same (minor units, with sign). */
export interface BankDiffers {
  readonly line: number;
  readonly record: string;
  readonly theirs: number;
  readonly ours: number;
  /** A slip of digits; card takings less a fee; or only the same kind of movement that day. */
  readonly how: 'digits' | 'fee' | 'same_day';
}

/** Card payouts lose at most so much of a hundred to fees (common practice). */
const FEE_PERCENT_MOST = 6;

/**
 * Pairs of an unmatched line and an unmatched record that nearly agree, the nearest first; each
 * stands in one pair. Where several fit equally well, none is said.
 */
export function nearMisses(
  lines: readonly LineToMatch[],
  entries: readonly BankEntry[],
): BankDiffers[] {
  const pairs = lines.flatMap((line) =>
    entries.flatMap((entry) => {
      const how = isNear(line, entry) ? howNear(line, entry) : undefined;
      if (how === undefined) return [];
      return [{ line, entry, how, far: FAR[how] + Math.abs(daysApart(line, entry)) }];
    }),
  );
  pairs.sort((a, b) => a.far - b.far);
  const usedLines = new Set<LineToMatch>();
  const usedEntries = new Set<BankEntry>();
  const found: BankDiffers[] = [];
  for (const { line, entry, how, far } of pairs) {
    if (usedLines.has(line) || usedEntries.has(entry)) continue;
    const isTied = pairs.some(
      (other) =>
        other.far === far &&
        (other.line === line) !== (other.entry === entry) &&
        !usedLines.has(other.line) &&
        !usedEntries.has(other.entry),
    );
    if (isTied) continue;
    usedLines.add(line);
    usedEntries.add(entry);
    const { record, cents: ours } = entry;
    found.push({ line: line.line, record, theirs: line.cents, ours, how });
  }
  return found.sort((a, b) => a.line - b.line);
}

const FAR = { digits: 0, fee: 100, same_day: 200 } as const;

function howNear(line: LineToMatch, entry: BankEntry): BankDiffers['how'] | undefined {
  if (Math.sign(line.cents) !== Math.sign(entry.cents)) return undefined;
  if (isSlipOfDigits(line.cents, entry.cents)) return 'digits';
  const less = entry.cents - line.cents;
  const isCards = entry.kind === 'card-settle';
  if (isCards && less > 0 && less * 100 <= entry.cents * FEE_PERCENT_MOST) return 'fee';
  const isSameDay = line.date === entry.date && entry.kind !== 'bank-fee';
  return isSameDay && !isCards ? 'same_day' : undefined;
}
