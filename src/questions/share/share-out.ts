import Fraction from 'fraction.js';
import { sortedEntries } from '../../base/order.ts';
import type { Lines } from '../../records/fields.ts';
import { divisorShares } from '../../solvers/share/divisor-shares.ts';
import { type SharedTable, sharedTable } from '../../solvers/share/shared-table.ts';

/**
 * The rule that sets what each seller gets in all:
 * `remainder`: exact parts by weight, rounded by largest remainder, what earlier share-outs owed
 * carried on; `divisor`: Webster's divisor method, which no growth of the pool ever turns against
 * anybody; `rota`: one unit after the other in a fixed turn, whatever the weights.
 */
export type ShareMethod = 'remainder' | 'divisor' | 'rota';

export interface ShareInput {
  /** Whole units by product; at least one unit in all. */
  readonly products: Lines;
  /** In the order that settles ties; at least one with a weight above 0. */
  readonly sellers: readonly ShareSeller[];
  readonly method?: ShareMethod | undefined;
  /** For the rota: how many turns earlier share-outs have used up. */
  readonly turn?: number | undefined;
}

export interface ShareSeller {
  readonly seller: string;
  /** A whole number, 0 or more. */
  readonly weight: number;
  /** Units credited so far less units due so far. */
  readonly carried?: Fraction | number | undefined;
  /** Whole units that are fixed by hand; all together at most what there is of the product. */
  readonly locked?: Lines | undefined;
}

export interface SharedOut {
  /** Whole units by seller and product; products of which a seller gets none are left out. */
  readonly lines: Readonly<Record<string, Lines>>;
  readonly totals: Readonly<Record<string, number>>;
  /** Exact units due by weight from this pool alone, as decimals. */
  readonly due: Readonly<Record<string, number>>;
  /** Units by product that nobody could be given, since all were locked. */
  readonly left: Lines;
  /** The largest |units given − units due|, what was carried included. */
  readonly worst: number;
  /** Units beyond the exact share rounded up or down that a cell had to go; 0 without locks. */
  readonly beyond: number;
  /** Sellers with equal claims on the last unit: the order listed decided. */
  readonly tied: readonly string[];
  /** Sellers who had to take these products, since everybody else's cells are locked. */
  readonly forced: readonly {
    readonly sellers: readonly string[];
    readonly products: readonly string[];
  }[];
}

/** Shares out a pool; the input has been looked over (intake/problems/share-problem.ts). */
export function shareOut(input: ShareInput): SharedOut {
  const products = sortedEntries(input.products);
  const names = products.map(([product]) => product);
  const carried = input.sellers.map((seller) => new Fraction(seller.carried ?? 0));
  const aims = aimsOf(input);
  const table = sharedTable({
    columns: products.map(([, units]) => units),
    rows: input.sellers.map((seller, at) => ({
      weight: seller.weight,
      carried: carried[at] ?? new Fraction(0),
      locked: new Map(
        Object.entries(seller.locked ?? {}).map(([product, units]) => [
          names.indexOf(product),
          units,
        ]),
      ),
      ...(aims === undefined ? {} : { aim: aims.shares[at] ?? 0 }),
    })),
  });
  return named(input, names, table, carried, aims?.tied);
}

/** Totals that another rule than the exact due sets. */
function aimsOf({ method, sellers, products, turn = 0 }: ShareInput) {
  const total = Object.values(products).reduce((sum, units) => sum + units, 0);
  const weights = sellers.map(({ weight }) => weight);
  if (method === 'divisor') return divisorShares(total, weights, 'webster');
  if (method !== 'rota') return undefined;
  return { shares: rotaShares(total, weights, turn), tied: [] };
}

/** One unit after the other in turn to all with a weight, going on after so many turns before. */
function rotaShares(total: number, weights: readonly number[], turn: number): number[] {
  const taking = weights.filter((weight) => weight > 0).length;
  const each = Math.floor(total / taking);
  const extra = total - each * taking;
  let place = 0;
  return weights.map((weight) => {
    if (weight === 0) return 0;
    const wait = (place - (turn % taking) + taking) % taking;
    place += 1;
    return each + (wait < extra ? 1 : 0);
  });
}

function named(
  { sellers, products }: ShareInput,
  names: readonly string[],
  table: SharedTable,
  carried: readonly Fraction[],
  tied: readonly number[] = table.tied,
): SharedOut {
  const of = <T>(value: (at: number) => T): Record<string, T> =>
    Object.fromEntries(sellers.map(({ seller }, at) => [seller, value(at)]));
  const total = (at: number) => (table.cells[at] ?? []).reduce((sum, units) => sum + units, 0);
  const due = (at: number) => table.due[at] ?? new Fraction(0);
  const worst = sellers.map((_, at) =>
    due(at)
      .sub(total(at))
      .sub(carried[at] ?? 0)
      .abs(),
  );
  const sellerAt = (at: number) => sellers[at]?.seller ?? '';
  const nameAt = (at: number) => names[at] ?? '';
  return {
    lines: of((at) => linesOf(names, table.cells[at] ?? [])),
    totals: of(total),
    due: of((at) => due(at).valueOf()),
    left: Object.fromEntries(
      Object.keys(products).map((product) => [product, table.left[names.indexOf(product)] ?? 0]),
    ),
    worst: worst
      .reduce((most, each) => (each.compare(most) > 0 ? each : most), new Fraction(0))
      .valueOf(),
    beyond: table.beyond,
    tied: tied.map(sellerAt),
    forced: table.forced.map(({ rows, columns }) => ({
      sellers: rows.map(sellerAt),
      products: columns.map(nameAt),
    })),
  };
}

function linesOf(names: readonly string[], cells: readonly number[]): Lines {
  const entries = names.map((product, at): [string, number] => [product, cells[at] ?? 0]);
  return Object.fromEntries(entries.filter(([, units]) => units > 0));
}
