import { addDays } from '../../base/day.ts';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type BankEntry, bankEntries } from './bank-entries.ts';
import { linesInError } from './bank-errors.ts';
import { BankMatching, type Match, type MatchChoice } from './bank-matching.ts';
import { type BankDiffers, nearMisses } from './bank-near-misses.ts';
import { DAYS_AFTER, type LineToMatch } from './bank-window.ts';

export interface StatementToMatch {
  readonly lines: readonly LineToMatch[];
  /** Minor units before the first line and after the last, where the bank says them. */
  readonly opening?: number | undefined;
  readonly closing?: number | undefined;
}

export interface BankMatch {
  readonly matched: readonly Match[];
  readonly unmatchedLines: readonly number[];
  readonly unmatchedRecords: readonly string[];
  readonly choices: readonly MatchChoice[];
  /** A line and a record that are nearly the same; both stay among what is unmatched. */
  readonly differ: readonly BankDiffers[];
  /** Lines that the bank sent twice (the same name, day and amount): they are no money. */
  readonly repeated: readonly number[];
  /** Lines that are marked as the bank's own errors; they are not among what is unmatched. */
  readonly bankErrors: readonly number[];
  /** Pairs of unmatched lines that take each other back. */
  readonly mirrored: readonly (readonly [number, number])[];
  /** Minor units on the account by the book, and by the bank after its last line. */
  readonly bookBalance: number;
  readonly bankBalance: number;
  /** What unmatched records come to: in the book and not yet at the bank. */
  readonly outstanding: number;
  /** What unmatched lines come to: at the bank and not in the book. */
  readonly notInBook: number;
  /** What the bank's own errors come to. */
  readonly wrongAtBank: number;
}

/**
 * Holds a bank's statement against the book: what agrees, what nearly does, what only one has.
 * Deterministic, so that the same file gives the same answer however often it comes.
 */
export function matchBank(ledger: Ledger, statement: StatementToMatch): BankMatch {
  const { lines } = statement;
  const repeats = repeatedLines(lines);
  const once = lines.filter((line) => !repeats.has(line));
  const wrong = linesInError(ledger, once);
  const fresh = once.filter((line) => !wrong.has(line));
  const opening = openingOf(statement);
  const first = fresh.map(({ date }) => date).toSorted(byText)[0];
  const entries = entriesFor(bankEntries(ledger), first, opening);
  const matching = new BankMatching(fresh, entries);
  matching.keepAccepted();
  matching.pairEqual();
  matching.joinRecords();
  matching.joinLines();
  const openLines = [...matching.freeLines];
  const openEntries = withoutClearedEarlier(ledger, matching, entries, { first, opening });
  const open = new Set([...openLines, ...repeats].map(({ line }) => line));
  return {
    matched: matching.matches(),
    unmatchedLines: lines.map(({ line }) => line).filter((line) => open.has(line)),
    unmatchedRecords: [...new Set(openEntries.map(({ record }) => record))],
    choices: matching.choices,
    differ: nearMisses(openLines, openEntries),
    repeated: [...repeats].map(({ line }) => line),
    bankErrors: [...wrong].map(({ line }) => line),
    mirrored: mirroredLines(openLines),
    bookBalance: ledger.balances.moneyOf('bank'),
    bankBalance: statement.closing ?? (opening ?? 0) + sum(once.map(({ cents }) => cents)),
    outstanding: sum(openEntries.map(({ cents }) => cents)),
    notInBook: sum(openLines.map(({ cents }) => cents)),
    wrongAtBank: sum([...wrong].map(({ cents }) => cents)),
  };
}

/** What the account held before the first line, said or worked out. */
function openingOf({ lines, opening, closing }: StatementToMatch): number | undefined {
  if (opening !== undefined || closing === undefined) return opening;
  return closing - sum(lines.map(({ cents }) => cents));
}

/**
 * Entries that this statement can show. Those cleared before its first day are not among them, and
 * neither, where the account held something then, those older than any line can be late.
 */
function entriesFor(
  entries: readonly BankEntry[],
  first: string | undefined,
  opening = 0,
): readonly BankEntry[] {
  if (first === undefined) return entries;
  const oldest = opening === 0 ? '' : addDays(first, -DAYS_AFTER);
  return entries.filter(
    ({ date, cleared }) => date >= oldest && (cleared === undefined || cleared.date >= first),
  );
}

/**
 * Leaves out what an earlier statement has shown: where all that is older than this statement and
 * has no line in it comes to just what the account held then, it was cleared before.
 */
function withoutClearedEarlier(
  ledger: Ledger,
  { freeEntries }: BankMatching,
  entries: readonly BankEntry[],
  { first, opening }: { readonly first: string | undefined; readonly opening: number | undefined },
): readonly BankEntry[] {
  const open = [...freeEntries];
  if (first === undefined || opening === undefined || opening === 0) return open;
  const shownLate = entries.filter((entry) => entry.date < first && !freeEntries.has(entry));
  const before = ledger.asOf(addDays(first, -1)).moneyOf('bank');
  const isAllOlder = before - sum(shownLate.map(({ cents }) => cents)) === opening;
  return isAllOlder ? open.filter(({ date }) => date >= first) : open;
}

/** Lines that come again under the bank's own name for them, with the same day and amount. */
function repeatedLines(lines: readonly LineToMatch[]): Set<LineToMatch> {
  const seen = new Set<string>();
  const again = new Set<LineToMatch>();
  for (const line of lines) {
    if (line.reference === undefined) continue;
    const key = `${line.reference}|${line.date}|${line.cents}|${line.text}`;
    if (seen.has(key)) again.add(line);
    seen.add(key);
  }
  return again;
}

/** Lines of which the later takes the earlier back, like a deposit booked twice and mended. */
function mirroredLines(open: readonly LineToMatch[]): (readonly [number, number])[] {
  const waiting = new Map<number, LineToMatch[]>();
  const pairs: (readonly [number, number])[] = [];
  for (const line of open.toSorted((a, b) => byText(a.date, b.date) || a.line - b.line)) {
    const opposite = waiting.get(-line.cents)?.shift();
    if (opposite !== undefined) pairs.push([opposite.line, line.line]);
    else waiting.set(line.cents, [...(waiting.get(line.cents) ?? []), line]);
  }
  return pairs;
}
