import { byText } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { isMovement, type MovementKind, type MovementRecord } from '../../records/record.ts';

/**
 * Numbers that are missing between the slips and receipts of a kind. Papers of one book of slips,
 * or of one device, run without a gap (common practice), so that a gap speaks for a record that is
 * missing, and no gap against it.
 */
export interface PaperGaps {
  /** Records of the kind that carry a number, over all of the kind. */
  readonly carried: number;
  /** Numbers from the first to the last of every series. */
  readonly numbers: number;
  /** The numbers that no record has, as they would be written. */
  readonly missing: readonly string[];
}

/** A series tells nothing with fewer papers than this, or with a larger part of them missing. */
const PAPERS_MIN = 2;
const MISSING_MOST = 0.34;

/** The gaps of every book of papers, by `bookOf` a kind; kinds that are not here have no series. */
export function paperGaps(ledger: Ledger): ReadonlyMap<string, PaperGaps> {
  const papers = new Map<string, string[]>();
  const counting = new Map<string, number>();
  for (const record of ledger.standing.records()) {
    // The number of a record that was edited or removed has been used all the same.
    if (!isMovement(record)) continue;
    const book = bookOf(record.kind);
    if (ledger.standing.counts(record)) counting.set(book, (counting.get(book) ?? 0) + 1);
    const paper = paperOf(record);
    if (paper === undefined) continue;
    const known = papers.get(book) ?? [];
    papers.set(book, known);
    known.push(paper);
  }
  const found = new Map<string, PaperGaps>();
  for (const [book, known] of papers) {
    const { numbers, missing } = gapsIn(known);
    const carried = Math.min(1, new Set(known).size / Math.max(1, counting.get(book) ?? 0));
    if (numbers > 0) found.set(book, { carried, numbers, missing });
  }
  return found;
}

/** Swaps are written in one book, whichever way they go; every other kind has its own. */
export function bookOf(kind: MovementKind): string {
  return kind === 'swap-in' || kind === 'swap-out' ? 'swap' : kind;
}

/** The number of the paper that a record was keyed from. */
export function paperOf(record: MovementRecord): string | undefined {
  if (record.kind === 'payment') return record.receipt;
  return 'slip' in record ? record.slip : undefined;
}

function gapsIn(papers: readonly string[]): { numbers: number; missing: string[] } {
  const series = new Map<string, Map<number, string>>();
  for (const paper of papers) {
    const [, prefix = '', digits] = /^(.*?)(\d{1,9})$/.exec(paper) ?? [];
    if (digits === undefined) continue;
    const own = series.get(prefix) ?? new Map<number, string>();
    series.set(prefix, own.set(Number(digits), digits));
  }
  let numbers = 0;
  const missing: string[] = [];
  for (const [prefix, own] of [...series].sort((a, b) => byText(a[0], b[0]))) {
    const [first, last] = [Math.min(...own.keys()), Math.max(...own.keys())];
    const span = last - first + 1;
    if (own.size < Math.max(PAPERS_MIN, span * (1 - MISSING_MOST))) continue;
    numbers += span;
    const width = own.get(first)?.length ?? 1;
    for (let number = first; number < last; number += 1) {
      if (!own.has(number)) missing.push(`${prefix}${String(number).padStart(width, '0')}`);
    }
  }
  return { numbers, missing };
}
