import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';
import { nearestShares } from './nearest-shares.ts';
import { pricedStart } from './priced-start.ts';

/**
 * A table of exact shares rounded to whole numbers so that every row and every column adds up to
 * its given total, each cell stays within its bounds, and the sum of squared distances from the
 * exact shares is least. This is controlled rounding as a minimum-cost flow (Cox, A constructive
 * procedure for unbiased controlled rounding, J. Amer. Statist. Assoc. 82, 1987; Ahuja, Magnanti
 * and Orlin, Network Flows, 1993, sections 6.2 and 9.7, from memory), solved by successive shortest
 * paths over the columns alone: rows are right from the start, and whole units then move from
 * columns with too much to columns with too little, each move along the cheapest chain of swaps
 * within rows. A table has far fewer columns than rows, so a path is found in a glance.
 *
 * Ties between equally near tables: the chain met first, rows and columns in the order given.
 */
export interface TableToRound {
  /** Whole numerators of the exact shares, by row and column; the share is `numerator / unit`. */
  readonly numerators: readonly (readonly number[])[];
  /** The common denominator, a whole number of 1 or more. */
  readonly unit: number;
  readonly rowTotals: readonly number[];
  readonly columnTotals: readonly number[];
  /** The least and the most whole number that a cell may take, by row and column. */
  readonly least: readonly (readonly number[])[];
  readonly most: readonly (readonly number[])[];
}

export type RoundedTable =
  | { readonly fits: true; readonly cells: readonly (readonly number[])[] }
  /** No such table. Rows and columns that want more of each other than the bounds allow. */
  | { readonly fits: false; readonly rows: readonly number[]; readonly columns: readonly number[] };

export function roundedTable(table: TableToRound): RoundedTable {
  const work = new Rounding(table);
  if (!work.startFromPrices()) {
    for (const row of table.rowTotals.keys()) {
      if (!work.fillRow(row)) return { fits: false, rows: [row], columns: [] };
    }
  }
  return work.balanceColumns();
}

/** One rounding under way. Rows always add up; columns come to. */
class Rounding {
  private readonly rows: number;
  private readonly columns: number;
  private readonly unit: number;
  private readonly rowTotals: readonly number[];
  /** By row and column in one array: whole cells, their bounds and exact shares. */
  private readonly cells: Float64Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  private readonly numerators: Float64Array;
  /** Units too many (negative: too few) in each column. */
  private readonly excess: Float64Array;
  /** From column to column: the cheapest swap within one row, and that row (-1: none). */
  private readonly swapCost: Float64Array;
  private readonly swapRow: Int32Array;

  constructor({ numerators, unit, rowTotals, columnTotals, least, most }: TableToRound) {
    this.rows = rowTotals.length;
    this.columns = columnTotals.length;
    this.unit = unit;
    this.rowTotals = rowTotals;
    this.cells = new Float64Array(this.rows * this.columns);
    this.least = flat(least, this.columns);
    this.most = flat(most, this.columns);
    this.numerators = flat(numerators, this.columns);
    this.excess = Float64Array.from(columnTotals, (total) => -total);
    this.swapCost = new Float64Array(this.columns ** 2).fill(Number.POSITIVE_INFINITY);
    this.swapRow = new Int32Array(this.columns ** 2).fill(-1);
  }

  /**
   * The quick start, where every cell is its least or one more: false where some cell has more
   * room, or a row or column cannot come out.
   */
  startFromPrices(): boolean {
    const free = new Uint8Array(this.cells.length);
    const rowWants = Float64Array.from(this.rowTotals);
    const columnWants = this.excess.map((excess) => -excess);
    const room = new Float64Array(this.rows);
    for (let at = 0; at < this.cells.length; at += 1) {
      const least = read(this.least, at);
      const more = read(this.most, at) - least;
      if (more > 1) return false;
      const row = Math.floor(at / this.columns);
      const column = at - row * this.columns;
      rowWants[row] = read(rowWants, row) - least;
      columnWants[column] = read(columnWants, column) - least;
      room[row] = read(room, row) + more;
      free[at] = more;
    }
    const rowsFit = rowWants.every((units, row) => units >= 0 && units <= read(room, row));
    if (!rowsFit || columnWants.some((units) => units < 0)) return false;
    const remainders = this.numerators.map((each, at) => each - read(this.least, at) * this.unit);
    const { rows, columns } = this;
    const up = pricedStart({ rows, columns, remainders, free, rowWants, columnWants });
    for (let at = 0; at < this.cells.length; at += 1) {
      const units = read(this.least, at) + (up[at] ?? 0);
      this.cells[at] = units;
      this.addTo(at % columns, units);
    }
    return true;
  }

  /** Gives a row its total where that costs its own cells least; false where it does not fit. */
  fillRow(row: number): boolean {
    const start = row * this.columns;
    const end = start + this.columns;
    const total = this.rowTotals[row] ?? 0;
    const least = Array.from(this.least.subarray(start, end));
    const most = Array.from(this.most.subarray(start, end));
    if (sum(least) > total || sum(most) < total) return false;
    const numerators = this.numerators.subarray(start, end);
    const floors = Array.from(numerators, (numerator) => Math.floor(numerator / this.unit));
    const remainder = (place: number) => read(numerators, place) % this.unit;
    const compareRemainders = (a: number, b: number) => remainder(a) - remainder(b);
    const { shares } = nearestShares(total, { floors, compareRemainders }, { least, most });
    this.cells.set(shares, start);
    shares.forEach((share, column) => {
      this.addTo(column, share);
    });
    return true;
  }

  /** Moves units between columns until each adds up, or names what stands in the way. */
  balanceColumns(): RoundedTable {
    for (let row = 0; row < this.rows; row += 1) this.offerSwaps(row);
    for (;;) {
      const path = this.cheapestPath();
      if (path === undefined) break;
      if ('stuck' in path) return { fits: false, ...this.rowsHolding(path.stuck) };
      this.moveAlong(path.columns);
    }
    const cells = Array.from({ length: this.rows }, (_, row) => {
      const start = row * this.columns;
      return Array.from(this.cells.subarray(start, start + this.columns));
    });
    return { fits: true, cells };
  }

  /** What one unit more in a cell adds to the squares, times the unit: 2 (cell − share) + 1. */
  private costOfMore(at: number): number {
    return 2 * (read(this.cells, at) * this.unit - read(this.numerators, at)) + this.unit;
  }

  /** Offers one row's swaps between columns wherever they are cheaper than those so far. */
  private offerSwaps(row: number): void {
    const { columns, cells } = this;
    const start = row * columns;
    for (let from = 0; from < columns; from += 1) {
      if (read(cells, start + from) <= read(this.least, start + from)) continue;
      const less = 2 * this.unit - this.costOfMore(start + from);
      for (let to = 0; to < columns; to += 1) {
        if (to === from || read(cells, start + to) >= read(this.most, start + to)) continue;
        const cost = less + this.costOfMore(start + to);
        const swap = from * columns + to;
        if (cost >= read(this.swapCost, swap)) continue;
        this.swapCost[swap] = cost;
        this.swapRow[swap] = row;
      }
    }
  }

  /** Looks through all rows again for the swaps that a changed row had offered. */
  private offerAgain(changed: ReadonlySet<number>): void {
    const { columns } = this;
    for (let swap = 0; swap < columns * columns; swap += 1) {
      if (!changed.has(read(this.swapRow, swap))) continue;
      this.swapCost[swap] = Number.POSITIVE_INFINITY;
      this.swapRow[swap] = -1;
      const from = Math.floor(swap / columns);
      for (let row = 0; row < this.rows; row += 1) {
        this.offerSwap(row, from, swap - from * columns, swap);
      }
    }
    for (const row of changed) this.offerSwaps(row);
  }

  private offerSwap(row: number, from: number, to: number, swap: number): void {
    const less = row * this.columns + from;
    const more = row * this.columns + to;
    if (read(this.cells, less) <= read(this.least, less)) return;
    if (read(this.cells, more) >= read(this.most, more)) return;
    const cost = 2 * this.unit - this.costOfMore(less) + this.costOfMore(more);
    if (cost >= read(this.swapCost, swap)) return;
    this.swapCost[swap] = cost;
    this.swapRow[swap] = row;
  }

  /**
   * Cheapest chain of columns from any with too much to any with too little, by label correction
   * (Bellman and Ford); nothing when every column adds up.
   */
  private cheapestPath(): { columns: number[] } | { stuck: number[] } | undefined {
    const { columns, excess } = this;
    const cost = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
    const cameFrom = new Int32Array(columns).fill(-1);
    const queue: number[] = [];
    for (let column = 0; column < columns; column += 1) {
      if (read(excess, column) > 0) {
        cost[column] = 0;
        queue.push(column);
      }
    }
    if (queue.length === 0) return undefined;
    for (let from = queue.shift(); from !== undefined; from = queue.shift()) {
      for (let to = 0; to < columns; to += 1) {
        const reached = read(cost, from) + read(this.swapCost, from * columns + to);
        if (reached >= read(cost, to)) continue;
        cost[to] = reached;
        cameFrom[to] = from;
        if (!queue.includes(to)) queue.push(to);
      }
    }
    let end = -1;
    for (let column = 0; column < columns; column += 1) {
      if (read(excess, column) >= 0 || read(cost, column) === Number.POSITIVE_INFINITY) continue;
      if (end === -1 || read(cost, column) < read(cost, end)) end = column;
    }
    if (end === -1)
      return { stuck: [...cost.keys()].filter((at) => read(cost, at) < Number.POSITIVE_INFINITY) };
    const path = [end];
    for (let at = read(cameFrom, end); at !== -1; at = read(cameFrom, at)) path.unshift(at);
    return { columns: path };
  }

  private moveAlong(path: readonly number[]): void {
    const changed = new Set<number>();
    const [first] = path;
    const last = path.at(-1);
    assert(first !== undefined && last !== undefined, 'a path has two ends');
    for (let step = 1; step < path.length; step += 1) {
      const from = path[step - 1] ?? 0;
      const to = path[step] ?? 0;
      const row = read(this.swapRow, from * this.columns + to);
      const less = row * this.columns + from;
      const more = row * this.columns + to;
      this.cells[less] = read(this.cells, less) - 1;
      this.cells[more] = read(this.cells, more) + 1;
      changed.add(row);
    }
    this.addTo(first, -1);
    this.addTo(last, 1);
    this.offerAgain(changed);
  }

  /** The rows that hold units which could leave the stuck columns only by breaking a bound. */
  private rowsHolding(columns: readonly number[]): { rows: number[]; columns: readonly number[] } {
    const rows = Array.from({ length: this.rows }, (_, row) => row).filter((row) =>
      columns.some((column) => {
        const at = row * this.columns + column;
        return read(this.cells, at) > read(this.least, at);
      }),
    );
    return { rows, columns };
  }

  private addTo(column: number, units: number): void {
    this.excess[column] = read(this.excess, column) + units;
  }
}

function flat(table: readonly (readonly number[])[], columns: number): Float64Array {
  const all = new Float64Array(table.length * columns);
  table.forEach((row, at) => {
    all.set(row, at * columns);
  });
  return all;
}

/** A number at a place that exists; typed arrays give `undefined` only past their end. */
function read(values: Float64Array | Int32Array, at: number): number {
  return values[at] ?? 0;
}
