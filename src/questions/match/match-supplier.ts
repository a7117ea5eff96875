import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { pairInOrder } from '../../solvers/match/pair-in-order.ts';
import { sumsTo } from '../../solvers/match/sums-to.ts';
import { dayNumber } from './bank-entries.ts';
import { isSlipOfDigits } from './slip-of-digits.ts';
import { differencesBetween, type PaperDifference } from './supplier-differences.ts';
import { type SupplierEntry, supplierEntries } from './supplier-entries.ts';
import {
  papersOf,
  type SupplierLineToMatch,
  type SupplierPaper,
  slipKey,
} from './supplier-papers.ts';

export interface SupplierStatement {
  readonly lines: readonly SupplierLineToMatch[];
  /** Minor units that the group owes by the statement, where it says so. */
  readonly owed?: number | undefined;
}

/** A line of the statement that says what records of the book say. */
interface SupplierAgreed {
  readonly line: number;
  readonly records: readonly string[];
  readonly why: SupplierReason;
  /** The same in all, on the same day, and the only one it could be. */
  readonly sure: boolean;
}

export type SupplierReason =
  | { readonly kind: 'same_slip'; readonly days: number }
  | { readonly kind: 'same_content'; readonly days: number; readonly others: number }
  | { readonly kind: 'records_together'; readonly count: number }
  | { readonly kind: 'sort_not_said'; readonly days: number };

/** A line and a record that are about the same thing and do not say the same. */
interface SupplierDiffers {
  /** None where the statement leaves a product of the paper out. */
  readonly line: number | undefined;
  readonly records: readonly string[];
  readonly by: PaperDifference;
  /** What the supplier's account would be more by, were theirs right (minor units). */
  readonly off: number;
}

/** The three piles: what agrees, what differs and by what, what only one side has. */
export interface SupplierMatch {
  readonly matched: readonly SupplierAgreed[];
  readonly differ: readonly SupplierDiffers[];
  /** Lines that agree with nothing; those in `differ` are among them. */
  readonly unmatchedLines: readonly number[];
  /** Records of which no line agrees; those in `differ` may be among them. */
  readonly unmatchedRecords: readonly string[];
  /** Papers that only the supplier has, by their lines. */
  readonly onlyTheirs: readonly SupplierPaper[];
  readonly onlyOurs: readonly string[];
  /** Minor units on the supplier's account: minus is owed by the group. */
  readonly bookBalance: number;
  readonly bankBalance: number;
  /** What records that only the book has come to on that account. */
  readonly outstanding: number;
}

/** A supplier writes a paper at most so many days from the group's own day (common practice). */
const DAYS = 14;
/** Where amounts differ, the days may not. */
const DAYS_DIFFERING = 3;
const SUM_LIMITS = { members: 12, found: 2, steps: 100_000 };

export function matchSupplier(ledger: Ledger, statement: SupplierStatement): SupplierMatch {
  const entries = supplierEntries(ledger);
  const matching = new SupplierMatching(ledger, entries, papersOf(statement.lines, entries));
  matching.bySlip();
  matching.byContent();
  matching.bySums();
  matching.byNeighbourOrWay();
  matching.byLikeness();
  return matching.answer(statement);
}

class SupplierMatching {
  private readonly ledger: Ledger;
  private readonly entries: readonly SupplierEntry[];
  private readonly freePapers: Set<SupplierPaper>;
  private readonly freeEntries: Set<SupplierEntry>;
  private readonly matched: SupplierAgreed[] = [];
  private readonly differ: SupplierDiffers[] = [];

  constructor(ledger: Ledger, entries: readonly SupplierEntry[], papers: readonly SupplierPaper[]) {
    this.ledger = ledger;
    this.entries = entries;
    this.freePapers = new Set(papers);
    this.freeEntries = new Set(entries);
  }

  /** Papers that name the slip or order number of one record of their sort. */
  bySlip(): void {
    const bySlip = Map.groupBy(
      [...this.freeEntries].filter(({ reference }) => reference !== undefined),
      ({ sort, reference = '' }) => slipKey(sort, reference),
    );
    for (const paper of this.freePapers) {
      if (paper.reference === undefined) continue;
      const named = bySlip.get(slipKey(paper.sort, paper.reference)) ?? [];
      const [only] = named.filter((entry) => this.freeEntries.has(entry));
      if (only === undefined || named.length > 1) continue;
      const days = this.daysApart(paper, only);
      this.hold(paper, only, { kind: 'same_slip', days }, days === 0);
    }
  }

  /** Papers with the very goods or amount of a record of their sort, by the nearest days. */
  byContent(): void {
    const papers = Map.groupBy(this.freePapers, (paper) => contentKey(paper));
    for (const [key, group] of papers) {
      if (key === undefined) continue;
      const entries = [...this.freeEntries].filter((entry) => fitsContent(entry, group[0], key));
      this.pairNear(group, entries);
    }
    this.bySortUnsaid();
  }

  private pairNear(papers: readonly SupplierPaper[], entries: readonly SupplierEntry[]): void {
    const sorted = papers.toSorted((a, b) => dayNumber(a.date) - dayNumber(b.date));
    const days = (each: readonly { readonly date: string }[]) =>
      each.map(({ date }) => dayNumber(date));
    const pairs = pairInOrder(days(entries), days(sorted), DAYS, DAYS);
    const rivalsOf = (paper: SupplierPaper, entry: SupplierEntry) =>
      Math.max(
        entries.filter((other) => other !== entry && this.isNear(paper, other)).length,
        papers.filter((other) => other !== paper && this.isNear(other, entry)).length,
      );
    for (const [first, second] of pairs) {
      const paper = sorted[second];
      const entry = entries[first];
      if (paper === undefined || entry === undefined) continue;
      const apart = this.daysApart(paper, entry);
      const others = rivalsOf(paper, entry);
      const why = { kind: 'same_content', days: apart, others } as const;
      this.hold(paper, entry, why, apart === 0 && others === 0);
    }
  }

  /** Papers whose words tell no sort, where exactly one record has their goods or amount. */
  private bySortUnsaid(): void {
    for (const paper of this.freePapers) {
      if (paper.sort !== 'other') continue;
      const fitting = [...this.freeEntries].filter(
        (entry) => this.isNear(paper, entry) && isSameContent(paper, entry),
      );
      const [only] = fitting;
      if (only === undefined || fitting.length > 1) continue;
      const days = this.daysApart(paper, only);
      this.hold(paper, only, { kind: 'sort_not_said', days }, false);
    }
  }

  /** One amount for several records of its sort, where only one set of them comes to it. */
  bySums(): void {
    for (const paper of this.freePapers) {
      const cents = paper.cents ?? this.valueOf(paper);
      const near = [...this.freeEntries].filter(
        (entry) => entry.sort === paper.sort && this.isNear(paper, entry) && entry.cents > 0,
      );
      const { sets } = sumsTo(
        near.map((entry) => entry.cents),
        cents,
        SUM_LIMITS,
      );
      const [only] = sets;
      if (only === undefined || sets.length > 1 || only.length < 2) continue;
      const taken = only.flatMap((at) => near[at] ?? []);
      const records = [...new Set(taken.map(({ record }) => record))];
      const why = { kind: 'records_together', count: records.length } as const;
      this.freePapers.delete(paper);
      for (const entry of taken) this.freeEntries.delete(entry);
      for (const { line } of paper.lines) this.matched.push({ line, records, why, sure: false });
    }
  }

  /** Swaps with the same goods and another neighbour group, or the other way round. */
  byNeighbourOrWay(): void {
    for (const paper of this.freePapers) {
      if (!isSwap(paper)) continue;
      const fitting = [...this.freeEntries].filter(
        (entry) => isSwap(entry) && this.isNear(paper, entry) && isSameContent(paper, entry),
      );
      const [only] = fitting;
      if (only === undefined || fitting.length > 1) continue;
      this.hold(paper, only, { kind: 'same_content', days: 0, others: 0 }, false);
    }
  }

  /** What is left of one sort and about the same day, and looks alike, differs. */
  byLikeness(): void {
    const pairs = [...this.freePapers].flatMap((paper) =>
      [...this.freeEntries].flatMap((entry) => {
        const likeness = this.likeness(paper, entry);
        return likeness === undefined ? [] : [{ paper, entry, likeness }];
      }),
    );
    pairs.sort((a, b) => b.likeness - a.likeness);
    for (const { paper, entry, likeness } of pairs) {
      if (!this.freePapers.has(paper) || !this.freeEntries.has(entry)) continue;
      const days = this.daysApart(paper, entry);
      this.hold(paper, entry, { kind: 'same_content', days, others: likeness }, false);
    }
  }

  private likeness(paper: SupplierPaper, entry: SupplierEntry): number | undefined {
    const days = Math.abs(this.daysApart(paper, entry));
    if (paper.sort !== entry.sort || days > DAYS) return undefined;
    if (isOtherNeighbour(paper, entry)) return undefined;
    const products = Object.keys(paper.goods);
    if (products.length > 0) {
      const same = products.filter((each) => paper.goods[each] === entry.goods[each]).length;
      const shared = products.filter((each) => entry.goods[each] !== undefined).length;
      return shared === 0 ? undefined : same * 1000 + shared * 100 - days;
    }
    if (paper.cents === undefined) return undefined;
    if (days <= DAYS_DIFFERING) return 50 - days;
    return isSlipOfDigits(paper.cents, entry.cents) ? 20 - days : undefined;
  }

  /** A paper and a record are about the same thing: line by line they agree or differ. */
  private hold(
    paper: SupplierPaper,
    entry: SupplierEntry,
    why: SupplierReason,
    sure: boolean,
  ): void {
    this.freePapers.delete(paper);
    this.freeEntries.delete(entry);
    const records = [entry.record];
    const found = differencesBetween(paper, entry, (product) =>
      this.ledger.priceOn(product, entry.date),
    );
    for (const { line, by } of found) {
      this.differ.push({ line, records, by, off: this.offBy(by, entry) });
    }
    const differing = new Set(found.map(({ line }) => line));
    for (const { line } of paper.lines) {
      if (differing.has(line)) continue;
      this.matched.push({ line, records, why, sure: sure && found.length === 0 });
    }
  }

  private offBy(by: PaperDifference, { effect, date }: SupplierEntry): number {
    const sign = Math.sign(effect);
    switch (by.kind) {
      case 'units':
        return sign * (by.theirs - by.ours) * this.ledger.priceOn(by.product, date);
      case 'amount':
        return sign * (by.theirs - by.ours);
      case 'way':
        return -2 * effect;
      case 'neighbour':
        return 0;
    }
  }

  answer({ lines, owed }: SupplierStatement): SupplierMatch {
    const agreed = new Set(this.matched.map(({ line }) => line));
    const agreeing = new Set(this.matched.flatMap(({ records }) => records));
    const differing = new Set(this.differ.flatMap(({ records }) => records));
    const all = [...new Set(this.entries.map(({ record }) => record))];
    const unmatched = all.filter((record) => !agreeing.has(record));
    const onlyOurs = unmatched.filter((record) => !differing.has(record));
    const open = new Set(onlyOurs);
    return {
      matched: this.matched.toSorted((a, b) => a.line - b.line),
      differ: this.differ.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0)),
      unmatchedLines: lines.map(({ line }) => line).filter((line) => !agreed.has(line)),
      unmatchedRecords: unmatched,
      onlyTheirs: [...this.freePapers],
      onlyOurs,
      bookBalance: this.ledger.balances.moneyOf('supplier'),
      bankBalance: owed === undefined ? this.balanceOf(lines) : 0 - owed,
      outstanding: sum(
        this.entries.filter(({ record }) => open.has(record)).map(({ effect }) => effect),
      ),
    };
  }

  /** What the lines come to where the statement says no balance. */
  private balanceOf(lines: readonly SupplierLineToMatch[]): number {
    return sum(
      lines.map((line) => {
        const cents = line.cents ?? this.valueOf(line);
        return ADDS.has(line.sort) ? cents : TAKES.has(line.sort) ? 0 - cents : 0;
      }),
    );
  }

  private valueOf({ goods, date }: Pick<SupplierPaper, 'goods' | 'date'>): number {
    return sum(
      Object.entries(goods).map(([product, units]) => units * this.ledger.priceOn(product, date)),
    );
  }

  private isNear(paper: SupplierPaper, entry: SupplierEntry): boolean {
    return Math.abs(this.daysApart(paper, entry)) <= DAYS;
  }

  private daysApart(paper: SupplierPaper, entry: SupplierEntry): number {
    return dayNumber(paper.date) - dayNumber(entry.date);
  }
}

/** Sorts that lessen what the group owes, and that add to it. */
const ADDS: ReadonlySet<string> = new Set(['swap-out', 'debit', 'card', 'online', 'proceeds']);
const TAKES: ReadonlySet<string> = new Set([
  'delivery',
  'swap-in',
  'debit-returned',
  'posted',
  'gift',
]);

function isSwap({ sort }: { readonly sort: string }): boolean {
  return sort === 'swap-in' || sort === 'swap-out';
}

function isOtherNeighbour(paper: SupplierPaper, entry: SupplierEntry): boolean {
  return (
    paper.neighbour !== undefined &&
    entry.neighbour !== undefined &&
    paper.neighbour !== entry.neighbour
  );
}

/** The same for papers of one sort with one content; undefined where a paper says too little. */
function contentKey({ sort, goods, cents, neighbour }: SupplierPaper): string | undefined {
  const products = Object.keys(goods).toSorted();
  if (products.length > 0) {
    return [sort, neighbour ?? '', ...products.map((each) => `${each}=${goods[each]}`)].join('|');
  }
  return cents === undefined ? undefined : [sort, neighbour ?? '', `=${cents}`].join('|');
}

function fitsContent(entry: SupplierEntry, paper: SupplierPaper | undefined, key: string): boolean {
  if (paper === undefined || entry.sort !== paper.sort || isOtherNeighbour(paper, entry)) {
    return false;
  }
  return key !== '' && isSameContent(paper, entry);
}

/** The same goods, unit by unit; or, on a paper without goods, the same amount. */
function isSameContent(paper: SupplierPaper, entry: SupplierEntry): boolean {
  const products = Object.keys(paper.goods);
  if (products.length === 0) return paper.cents === entry.cents;
  return (
    products.length === Object.keys(entry.goods).length &&
    products.every((product) => paper.goods[product] === entry.goods[product])
  );
}
