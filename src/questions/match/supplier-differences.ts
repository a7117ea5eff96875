import type { SupplierEntry } from './supplier-entries.ts';
import type { SupplierPaper } from './supplier-papers.ts';

/** By what a line of the supplier's statement and a record differ; theirs first. */
export type PaperDifference =
  | {
      readonly kind: 'units';
      readonly product: string;
      readonly theirs: number;
      readonly ours: number;
    }
  | { readonly kind: 'amount'; readonly theirs: number; readonly ours: number }
  | {
      readonly kind: 'neighbour';
      readonly theirs: string;
      readonly ours: string;
    }
  | { readonly kind: 'way'; readonly theirs: 'in' | 'out' };

export interface LineDifference {
  /** None where the statement has no line for it. */
  readonly line: number | undefined;
  readonly by: PaperDifference;
}

/** @param priceOf minor units a unit on the record's day */
export function differencesBetween(
  paper: SupplierPaper,
  entry: SupplierEntry,
  priceOf: (product: string) => number,
): LineDifference[] {
  const whole = wholeDifference(paper, entry);
  if (whole !== undefined) return paper.lines.map(({ line }) => ({ line, by: whole }));
  const products = Object.keys(paper.goods);
  if (products.length === 0) {
    const { cents = entry.cents } = paper;
    const by = { kind: 'amount', theirs: cents, ours: entry.cents } as const;
    return cents === entry.cents ? [] : paper.lines.map(({ line }) => ({ line, by }));
  }
  const missing = Object.entries(entry.goods)
    .filter(([product]) => paper.goods[product] === undefined)
    .map(([product, ours]) => ({
      line: undefined,
      by: { kind: 'units', product, theirs: 0, ours } as const,
    }));
  return [...paper.lines.flatMap((line) => ofLine(line, paper, entry, priceOf)), ...missing];
}

function wholeDifference(paper: SupplierPaper, entry: SupplierEntry): PaperDifference | undefined {
  if (paper.sort !== entry.sort && paper.sort.startsWith('swap')) {
    return { kind: 'way', theirs: paper.sort === 'swap-in' ? 'in' : 'out' };
  }
  const { neighbour: theirs } = paper;
  const { neighbour: ours } = entry;
  if (theirs === undefined || ours === undefined || theirs === ours) return undefined;
  return { kind: 'neighbour', theirs, ours };
}

function ofLine(
  line: SupplierPaper['lines'][number],
  paper: SupplierPaper,
  entry: SupplierEntry,
  priceOf: (product: string) => number,
): LineDifference[] {
  const products = Object.keys(line.goods);
  const units = products.flatMap((product): LineDifference[] => {
    const theirs = paper.goods[product] ?? 0;
    const ours = entry.goods[product] ?? 0;
    if (theirs === ours) return [];
    return [{ line: line.line, by: { kind: 'units', product, theirs, ours } }];
  });
  if (units.length > 0 || line.cents === undefined || entry.sort === 'online') return units;
  // Only an exchange moves goods without an amount.
  const price = (product: string) => (entry.sort === 'exchange' ? 0 : priceOf(product));
  const ours = products.reduce(
    (total, product) => total + (line.goods[product] ?? 0) * price(product),
    0,
  );
  if (ours === line.cents) return [];
  return [{ line: line.line, by: { kind: 'amount', theirs: line.cents, ours } }];
}
