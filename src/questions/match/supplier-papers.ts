import type { Lines } from '../../records/fields.ts';
import type { EntrySort, SupplierEntry } from './supplier-entries.ts';

/** A line of the supplier's statement, as far as matching looks at it. */
export interface SupplierLineToMatch {
  readonly line: number;
  readonly date: string;
  readonly sort: EntrySort | 'other';
  /** Whole units by product; empty where the line is about money alone. */
  readonly goods: Lines;
  /** Minor units without a sign, where the line says an amount. */
  readonly cents: number | undefined;
  readonly reference: string | undefined;
  readonly neighbour: string | undefined;
}

/** Lines of the statement that are one paper: a delivery's products, a swap's, one amount. */
export interface SupplierPaper {
  readonly lines: readonly SupplierLineToMatch[];
  readonly sort: EntrySort | 'other';
  readonly date: string;
  readonly reference: string | undefined;
  readonly neighbour: string | undefined;
  readonly goods: Lines;
  readonly cents: number | undefined;
}

/**
 * Lines joined to papers: those that name a slip of the book by it, those about goods by sort, day
 * and neighbour as long as no product comes twice; any other line is a paper of its own.
 */
export function papersOf(
  lines: readonly SupplierLineToMatch[],
  entries: readonly SupplierEntry[],
): SupplierPaper[] {
  const slips = new Map(
    entries.flatMap((entry) =>
      entry.reference === undefined ? [] : [[slipKey(entry.sort, entry.reference), entry]],
    ),
  );
  const groups = new Map<string, SupplierLineToMatch[]>();
  const papers: SupplierLineToMatch[][] = [];
  for (const line of lines) {
    const entry = slips.get(slipKey(line.sort, line.reference ?? ''));
    const isGoods = Object.keys(line.goods).length > 0;
    const key =
      entry === undefined
        ? [line.sort, line.date, line.neighbour ?? ''].join('|')
        : slipKey(line.sort, line.reference ?? '');
    const group = groups.get(key);
    if (isGoods && group !== undefined && fitsIn(line, group, entry)) {
      group.push(line);
      continue;
    }
    const opened = [line];
    papers.push(opened);
    if (isGoods && (group === undefined || entry === undefined)) groups.set(key, opened);
  }
  return papers.map(paperOf);
}

/** Lines put together as one paper. */
function paperOf(lines: readonly SupplierLineToMatch[]): SupplierPaper {
  const [first] = lines;
  const goods: Record<string, number> = {};
  for (const line of lines) {
    for (const [product, units] of Object.entries(line.goods)) {
      goods[product] = (goods[product] ?? 0) + units;
    }
  }
  const amounts = lines.map(({ cents }) => cents);
  const said = amounts.filter((cents) => cents !== undefined);
  return {
    lines,
    sort: first?.sort ?? 'other',
    date: first?.date ?? '',
    reference: first?.reference,
    neighbour: lines.find(({ neighbour }) => neighbour !== undefined)?.neighbour,
    goods,
    cents: said.length === amounts.length ? said.reduce((a, b) => a + b, 0) : undefined,
  };
}

/** Slips are compared by their letters and digits: `LG 1041` is `lg-1041`. */
export function slipKey(sort: string, reference: string): string {
  return `${sort} ${reference.toLowerCase().replace(/[^\p{L}\d]/gu, '')}`;
}

/**
 * A product comes once on a paper; a second line of it belongs there only where both together are
 * what the book has, else it is the same line listed twice.
 */
function fitsIn(
  line: SupplierLineToMatch,
  group: readonly SupplierLineToMatch[],
  entry: SupplierEntry | undefined,
): boolean {
  return Object.entries(line.goods).every(([product, units]) => {
    const before = group.reduce((sum, { goods }) => sum + (goods[product] ?? 0), 0);
    return before === 0 || before + units === entry?.goods[product];
  });
}
