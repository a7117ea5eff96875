import { addDays } from '../../base/day.ts';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { mostDisjoint, type Way } from '../../solvers/match/most-disjoint.ts';
import { pairInOrder } from '../../solvers/match/pair-in-order.ts';
import { sumsTo } from '../../solvers/match/sums-to.ts';
import { type BankEntry, bankEntries, dayNumber } from './bank-entries.ts';

/** A line of the bank's statement, as far as matching looks at it. */
export interface LineToMatch {
  readonly line: number;
  readonly date: string;
  /** Minor units; positive came in. */
  readonly cents: number;
  readonly text: string;
}

export interface StatementToMatch {
  readonly lines: readonly LineToMatch[];
  /** Minor units before the first line and after the last, where the bank says them. */
  readonly opening?: number | undefined;
  readonly closing?: number | undefined;
}

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
  | { readonly kind: 'same_amount_and_day' }
  | { readonly kind: 'same_amount_and_slip'; readonly days: number }
  /** Days from the record to the bank; `others` more records or lines have the same amount. */
  | { readonly kind: 'same_amount'; readonly days: number; readonly others: number }
  | { readonly kind: 'records_together'; readonly count: number }
  | { readonly kind: 'lines_together'; readonly count: number };

export interface BankMatch {
  readonly matched: readonly Match[];
  readonly unmatchedLines: readonly number[];
  readonly unmatchedRecords: readonly string[];
  /** Several sets of records come to the same line: a person chooses. */
  readonly choices: readonly {
    readonly line: number;
    readonly sets: readonly (readonly string[])[];
  }[];
  /** Minor units on the account by the book, and by the bank after its last line. */
  readonly bookBalance: number;
  readonly bankBalance: number;
  /** What unmatched records come to: in the book and not yet at the bank. */
  readonly outstanding: number;
  /** What unmatched lines come to: at the bank and not in the book. */
  readonly notInBook: number;
}

/** The bank books at most so many days before or after the day a person wrote (common practice). */
const DAYS_BEFORE = 3;
const DAYS_AFTER = 10;
/** More receipts than this in one line are not guessed at. */
const TOGETHER_MOST = 8;
const CHOICES_MOST = 4;

export function matchBank(ledger: Ledger, statement: StatementToMatch): BankMatch {
  const entries = entriesFor(bankEntries(ledger), statement);
  const matching = new Matching(statement.lines, entries);
  matching.pairEqual();
  matching.joinRecords();
  matching.joinLines();
  const openLines = matching.openLines();
  const openEntries = matching.openEntries();
  const unmatched = [...new Set(openEntries.map(({ record }) => record))];
  const moved = sum(statement.lines.map(({ cents }) => cents));
  return {
    matched: matching.matches(),
    unmatchedLines: openLines.map(({ line }) => line),
    unmatchedRecords: unmatched,
    choices: matching.choices,
    bookBalance: ledger.balances.moneyOf('bank'),
    bankBalance: statement.closing ?? (statement.opening ?? 0) + moved,
    outstanding: sum(openEntries.map(({ cents }) => cents)),
    notInBook: sum(openLines.map(({ cents }) => cents)),
  };
}

/**
 * Entries that this statement can show: where the bank says that the account held something before
 * its first line, what is older than any line can be late belongs to earlier statements.
 */
function entriesFor(entries: readonly BankEntry[], { lines, opening = 0 }: StatementToMatch) {
  const first = lines.map(({ date }) => date).toSorted(byText)[0];
  if (opening === 0 || first === undefined) return entries;
  const oldest = addDays(first, -DAYS_AFTER);
  return entries.filter(({ date }) => date >= oldest);
}

class Matching {
  readonly choices: { line: number; sets: string[][] }[] = [];
  private readonly lines: readonly LineToMatch[];
  private readonly entries: readonly BankEntry[];
  private readonly freeLines: Set<number>;
  private readonly freeEntries: Set<number>;
  private readonly found: Match[] = [];

  constructor(lines: readonly LineToMatch[], entries: readonly BankEntry[]) {
    this.lines = lines;
    this.entries = entries;
    this.freeLines = new Set(lines.keys());
    this.freeEntries = new Set(entries.keys());
  }

  /** One line to one entry of the same amount: by the slip's number, then by the nearest days. */
  pairEqual(): void {
    const byAmount = Map.groupBy(this.freeEntries, (at) => this.entryAt(at).cents);
    const lineGroups = Map.groupBy(this.freeLines, (at) => this.lineAt(at).cents);
    for (const [cents, lines] of lineGroups) {
      const entries = byAmount.get(cents);
      if (entries !== undefined) this.pairGroup(lines, entries);
    }
  }

  private pairGroup(lines: readonly number[], entries: readonly number[]): void {
    const bySlip = this.pairBySlip(lines, entries);
    const left = lines
      .filter((at) => !bySlip.has(at))
      .sort((a, b) => byText(this.lineAt(a).date, this.lineAt(b).date) || a - b);
    const waiting = entries.filter((at) => this.freeEntries.has(at));
    const pairs = pairInOrder(
      waiting.map((at) => dayNumber(this.entryAt(at).date)),
      left.map((at) => dayNumber(this.lineAt(at).date)),
      DAYS_BEFORE,
      DAYS_AFTER,
    );
    for (const [first, second] of pairs) {
      const line = left[second] ?? 0;
      const entry = waiting[first] ?? 0;
      const days = this.daysApart(line, entry);
      const others = this.rivals(line, entry, left, waiting);
      const isSure = days === 0 && others === 0;
      const why: MatchReason = isSure
        ? { kind: 'same_amount_and_day' }
        : { kind: 'same_amount', days, others };
      this.take([line], [entry], why, isSure);
    }
  }

  private pairBySlip(lines: readonly number[], entries: readonly number[]): Set<number> {
    const taken = new Set<number>();
    for (const at of entries) {
      const { slip } = this.entryAt(at);
      if (slip === undefined) continue;
      const named = lines.filter(
        (line) =>
          !taken.has(line) && this.isNear(line, at) && holdsWord(this.lineAt(line).text, slip),
      );
      const [only] = named;
      if (only === undefined || named.length > 1) continue;
      taken.add(only);
      const days = this.daysApart(only, at);
      this.take([only], [at], { kind: 'same_amount_and_slip', days }, days === 0);
    }
    return taken;
  }

  /** How many other lines or entries of the same amount could be meant as well. */
  private rivals(
    line: number,
    entry: number,
    lines: readonly number[],
    entries: readonly number[],
  ): number {
    const otherLines = lines.filter((at) => at !== line && this.isNear(at, entry)).length;
    const otherEntries = entries.filter((at) => at !== entry && this.isNear(line, at)).length;
    return Math.max(otherLines, otherEntries);
  }

  /** Several records in one line: several deposits booked at once, a cheque and its fee. */
  joinRecords(): void {
    const ways: Way[] = [];
    for (const line of this.freeLines) {
      for (const items of this.sumsFor(this.lineAt(line).cents, this.entriesNear(line))) {
        ways.push({ line, items });
      }
      for (const items of this.netWays(line)) ways.push({ line, items });
    }
    const counts = Map.groupBy(ways, ({ line }) => line);
    for (const way of mostDisjoint(ways).chosen) {
      const rivals = (counts.get(way.line) ?? []).filter((other) => this.isOpen(other));
      if (rivals.length > 1 && !this.isOneRecord(way)) {
        const sets = rivals.map(({ items }) => this.recordsOf(items));
        this.choices.push({ line: this.lineAt(way.line).line, sets });
        continue;
      }
      const count = this.recordsOf(way.items).length;
      this.take([way.line], way.items, { kind: 'records_together', count }, false);
    }
  }

  /** A record whose parts go both ways, like a debit sent back less the fee, in one line. */
  private netWays(line: number): number[][] {
    const { cents } = this.lineAt(line);
    const byRecord = Map.groupBy(this.entriesNear(line), (at) => this.entryAt(at).record);
    return [...byRecord.values()].filter((parts) => {
      const amounts = parts.map((at) => this.entryAt(at).cents);
      const goBothWays = amounts.some((each) => each < 0) && amounts.some((each) => each > 0);
      return goBothWays && sum(amounts) === cents;
    });
  }

  private isOpen({ items }: Way): boolean {
    return items.every((item) => this.freeEntries.has(item));
  }

  private isOneRecord({ items }: Way): boolean {
    return this.recordsOf(items).length === 1;
  }

  /** One record in several lines: a deposit that the bank booked in parts. */
  joinLines(): void {
    for (const entry of this.freeEntries) {
      const near = [...this.freeLines].filter((line) => this.isNear(line, entry));
      const { cents } = this.entryAt(entry);
      const sets = sumsOf(
        near.map((line) => this.lineAt(line).cents),
        cents,
      ).map((places) => places.map((at) => near[at] ?? 0));
      const [only] = sets;
      if (only === undefined || sets.length > 1) continue;
      this.take(only, [entry], { kind: 'lines_together', count: only.length }, false);
    }
  }

  private sumsFor(cents: number, entries: readonly number[]): number[][] {
    const amounts = entries.map((at) => this.entryAt(at).cents);
    return sumsOf(amounts, cents).map((places) => places.map((at) => entries[at] ?? 0));
  }

  private take(
    lines: readonly number[],
    entries: readonly number[],
    why: MatchReason,
    sure: boolean,
  ): void {
    for (const entry of entries) this.freeEntries.delete(entry);
    const records = this.recordsOf(entries);
    for (const line of lines) {
      this.freeLines.delete(line);
      this.found.push({ line: this.lineAt(line).line, records, why, sure });
    }
  }

  matches(): Match[] {
    return this.found.toSorted((a, b) => a.line - b.line);
  }

  openLines(): LineToMatch[] {
    return [...this.freeLines].map((at) => this.lineAt(at));
  }

  openEntries(): BankEntry[] {
    return [...this.freeEntries].map((at) => this.entryAt(at));
  }

  private entriesNear(line: number): number[] {
    return [...this.freeEntries].filter((entry) => this.isNear(line, entry));
  }

  private isNear(line: number, entry: number): boolean {
    const days = this.daysApart(line, entry);
    return days >= -DAYS_BEFORE && days <= DAYS_AFTER;
  }

  private daysApart(line: number, entry: number): number {
    return dayNumber(this.lineAt(line).date) - dayNumber(this.entryAt(entry).date);
  }

  private recordsOf(entries: readonly number[]): string[] {
    return [...new Set(entries.map((at) => this.entryAt(at).record))];
  }

  private lineAt(at: number): LineToMatch {
    return this.lines[at] ?? NO_LINE;
  }

  private entryAt(at: number): BankEntry {
    return this.entries[at] ?? NO_ENTRY;
  }
}

const NO_LINE: LineToMatch = { line: 0, date: '2000-01-01', cents: 0, text: '' };
const NO_ENTRY: BankEntry = {
  record: '',
  kind: 'deposit',
  date: '2000-01-01',
  cents: 0,
  slip: undefined,
};

/** Sets of at least two amounts of one sign that come to a sum; none where there are too many. */
function sumsOf(amounts: readonly number[], cents: number): number[][] {
  const sign = Math.sign(cents);
  const places = [...amounts.keys()].filter((at) => {
    const amount = (amounts[at] ?? 0) * sign;
    return amount > 0 && amount < Math.abs(cents);
  });
  const values = places.map((at) => Math.abs(amounts[at] ?? 0));
  const limits = { members: TOGETHER_MOST, found: CHOICES_MOST };
  return sumsTo(values, Math.abs(cents), limits).map((set) => set.map((at) => places[at] ?? 0));
}

function holdsWord(text: string, word: string): boolean {
  return text
    .toLowerCase()
    .split(/[^\p{L}\d-]+/u)
    .includes(word.toLowerCase());
}
