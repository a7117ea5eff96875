import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import { mostDisjoint, openLines, type Way } from '../../solvers/match/most-disjoint.ts';
import { pairInOrder } from '../../solvers/match/pair-in-order.ts';
import { sumsTo } from '../../solvers/match/sums-to.ts';
import { type BankEntry, dayNumber } from './bank-entries.ts';
import { DAYS_AFTER, DAYS_BEFORE, daysApart, isNear, type LineToMatch } from './bank-window.ts';

export interface Match {
  readonly line: number;
  /** Ids of the records that it stands for. */
  readonly records: readonly string[];
  readonly why: MatchReason;
  /** Exact in amount and day, and the only one: may be taken without a look. */
  readonly sure: boolean;
}

/** Why a line and records go together; the words are in statements/match-words.ts. */
export type MatchReason =
  | { readonly kind: 'accepted' }
  | { readonly kind: 'same_amount_and_day' }
  | { readonly kind: 'same_amount_and_slip'; readonly days: number }
  /** Days from the record to the bank; `others` more records or lines have the same amount. */
  | { readonly kind: 'same_amount'; readonly days: number; readonly others: number }
  | { readonly kind: 'records_together'; readonly count: number }
  | { readonly kind: 'lines_together'; readonly count: number };

/** Several sets of records come to the same line: a person chooses. */
export interface MatchChoice {
  readonly line: number;
  readonly sets: readonly (readonly string[])[];
}

/** Sets of receipts for one line; beyond these limits nothing is said. */
const SUM_LIMITS = { members: 8, found: 5, steps: 60_000 };

/** Pairs lines with entries, from what is certain to what only fits. */
export class BankMatching {
  readonly choices: MatchChoice[] = [];
  readonly freeLines: Set<LineToMatch>;
  readonly freeEntries: Set<BankEntry>;
  private readonly found: Match[] = [];

  constructor(lines: readonly LineToMatch[], entries: readonly BankEntry[]) {
    this.freeLines = new Set(lines);
    this.freeEntries = new Set(entries);
  }

  /** What a person has accepted before stays so: the same file a second time changes nothing. */
  keepAccepted(): void {
    for (const line of this.freeLines) {
      const named = [...this.freeEntries].filter(
        ({ cleared }) =>
          cleared?.date === line.date && (cleared.reference ?? line.reference) === line.reference,
      );
      const same = named.find(({ cents }) => cents === line.cents);
      const together = sum(named.map(({ cents }) => cents)) === line.cents ? named : [];
      const entries = same === undefined ? together : [same];
      if (entries.length > 0) this.take([line], entries, { kind: 'accepted' }, true);
    }
  }

  /** One line to one entry of the same amount: by the slip's number, then by the nearest days. */
  pairEqual(): void {
    const byAmount = Map.groupBy(this.freeEntries, ({ cents }) => cents);
    for (const [cents, lines] of Map.groupBy(this.freeLines, (line) => line.cents)) {
      const entries = byAmount.get(cents);
      if (entries !== undefined) this.pairGroup(lines, entries);
    }
  }

  private pairGroup(lines: readonly LineToMatch[], entries: readonly BankEntry[]): void {
    this.pairBySlip(lines, entries);
    const left = lines
      .filter((line) => this.freeLines.has(line))
      .sort((a, b) => byText(a.date, b.date) || a.line - b.line);
    const waiting = entries.filter((entry) => this.freeEntries.has(entry));
    const pairs = pairInOrder(
      waiting.map(({ date }) => dayNumber(date)),
      left.map(({ date }) => dayNumber(date)),
      DAYS_BEFORE,
      DAYS_AFTER,
    );
    for (const [first, second] of pairs) {
      const line = left[second];
      const entry = waiting[first];
      if (line === undefined || entry === undefined) continue;
      const days = daysApart(line, entry);
      const others = rivals(line, entry, lines, entries);
      const isSure = days === 0 && others === 0;
      const why: MatchReason = isSure
        ? { kind: 'same_amount_and_day' }
        : { kind: 'same_amount', days, others };
      this.take([line], [entry], why, isSure);
    }
  }

  private pairBySlip(lines: readonly LineToMatch[], entries: readonly BankEntry[]): void {
    for (const entry of entries) {
      const { slip } = entry;
      if (slip === undefined) continue;
      const named = lines.filter(
        (line) => this.freeLines.has(line) && isNear(line, entry) && holdsWord(line.text, slip),
      );
      const [only] = named;
      if (only === undefined || named.length > 1) continue;
      const days = daysApart(only, entry);
      const isSure = days === 0 && rivals(only, entry, lines, entries) === 0;
      this.take([only], [entry], { kind: 'same_amount_and_slip', days }, isSure);
    }
  }

  /** Several records in one line: several deposits booked at once, a cheque and its fee. */
  joinRecords(): void {
    const entries = [...this.freeEntries];
    const lines = [...this.freeLines];
    const ways = lines.flatMap((line, at) => waysFor(line, at, entries));
    const open = openLines(ways);
    for (const way of mostDisjoint(ways).chosen) {
      const line = lines[way.line];
      const items = way.items.flatMap((at) => entries[at] ?? []);
      const records = recordsOf(items);
      if (line === undefined || (open.has(way.line) && records.length > 1)) continue;
      this.take([line], items, { kind: 'records_together', count: records.length }, false);
    }
    for (const at of open) {
      const line = lines[at];
      if (line === undefined || !this.freeLines.has(line)) continue;
      const sets = ways
        .filter((way) => way.line === at)
        .map(({ items }) => recordsOf(items.flatMap((item) => entries[item] ?? [])));
      this.choices.push({ line: line.line, sets });
    }
  }

  /** One record in several lines: a deposit that the bank booked in parts. */
  joinLines(): void {
    for (const entry of this.freeEntries) {
      const near = [...this.freeLines].filter((line) => isNear(line, entry));
      const sets = sumsOf(near, entry.cents);
      const [only] = sets;
      if (only === undefined || sets.length > 1) continue;
      const lines = only.flatMap((at) => near[at] ?? []);
      this.take(lines, [entry], { kind: 'lines_together', count: lines.length }, false);
    }
  }

  private take(
    lines: readonly LineToMatch[],
    entries: readonly BankEntry[],
    why: MatchReason,
    sure: boolean,
  ): void {
    for (const entry of entries) this.freeEntries.delete(entry);
    const records = recordsOf(entries);
    for (const line of lines) {
      this.freeLines.delete(line);
      this.found.push({ line: line.line, records, why, sure });
    }
  }

  matches(): Match[] {
    return this.found.toSorted((a, b) => a.line - b.line);
  }
}

/** How many other lines or entries of the same amount could be meant as well. */
function rivals(
  line: LineToMatch,
  entry: BankEntry,
  lines: readonly LineToMatch[],
  entries: readonly BankEntry[],
): number {
  const otherLines = lines.filter((other) => other !== line && isNear(other, entry)).length;
  const otherEntries = entries.filter((other) => other !== entry && isNear(line, other)).length;
  return Math.max(otherLines, otherEntries);
}

/** Ways to explain a line: entries of its own sign that add up to it, or parts of one record. */
function waysFor(line: LineToMatch, at: number, entries: readonly BankEntry[]): Way[] {
  const near = [...entries.keys()].filter((place) => {
    const entry = entries[place];
    return entry !== undefined && isNear(line, entry);
  });
  const nearEntries = near.flatMap((place) => entries[place] ?? []);
  const sets = [...sumsOf(nearEntries, line.cents), ...netParts(nearEntries, line.cents)];
  return sets.map((set) => ({ line: at, items: set.map((place) => near[place] ?? 0) }));
}

/** A record whose parts go both ways, like a debit sent back less the fee, in one line. */
function netParts(entries: readonly BankEntry[], cents: number): number[][] {
  const byRecord = Map.groupBy(entries.keys(), (at) => entries[at]?.record);
  return [...byRecord.values()].filter((parts) => {
    const amounts = parts.map((at) => entries[at]?.cents ?? 0);
    const goBothWays = amounts.some((each) => each < 0) && amounts.some((each) => each > 0);
    return goBothWays && sum(amounts) === cents;
  });
}

/** Sets of at least two amounts of one sign that come to a sum. */
function sumsOf(items: readonly { readonly cents: number }[], cents: number): number[][] {
  const sign = Math.sign(cents);
  const places = [...items.keys()].filter((at) => {
    const amount = (items[at]?.cents ?? 0) * sign;
    return amount > 0 && amount < Math.abs(cents);
  });
  const values = places.map((at) => Math.abs(items[at]?.cents ?? 0));
  const { sets } = sumsTo(values, Math.abs(cents), SUM_LIMITS);
  return sets.map((set) => set.map((at) => places[at] ?? 0));
}

function recordsOf(entries: readonly BankEntry[]): string[] {
  return [...new Set(entries.map(({ record }) => record))];
}

function holdsWord(text: string, word: string): boolean {
  return text
    .toLowerCase()
    .split(/[^\p{L}\d-]+/u)
    .includes(word.toLowerCase());
}
