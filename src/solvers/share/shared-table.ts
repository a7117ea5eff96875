import Fraction from 'fraction.js';
import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';
import { nearestShares, type Targets } from './nearest-shares.ts';
import { type RoundedTable, roundedTable } from './rounded-table.ts';

/**
 * Whole units of several columns at once shared among rows by weight:
 *
 * 1. every column is given out whole;
 * 2. every row's total is as near to what it is due as can be (see nearest-shares.ts): its part of
 *    the grand total by weight, less what it was given too much in earlier tables. Without earlier
 *    tables this is the method of largest remainders, with them cumulative quota;
 * 3. every cell is the floor or the ceiling of its exact share, or, where rows or locked cells do
 *    not leave room for that, at most the least possible number of units beyond them;
 * 4. among all such tables the squared distances of the cells from their exact shares add up to the
 *    least (see rounded-table.ts).
 *
 * Locked cells stay as they are and count towards their row and column. A row of weight 0 gets
 * nothing but its locked cells.
 */
export interface TableToShare {
  /** Whole units of each column. */
  readonly columns: readonly number[];
  /** In the order that settles ties. */
  readonly rows: readonly RowToShare[];
}

export interface RowToShare {
  /** A whole number, 0 or more. */
  readonly weight: number;
  /** Units given so far less units due so far; positive where the row has had too much. */
  readonly carried: Fraction;
  /** Whole units of cells that are fixed by hand, by column. */
  readonly locked: ReadonlyMap<number, number>;
  /** Units to come as near to as can be, where another rule than the due sets the row's total. */
  readonly aim?: number;
}

export interface SharedTable {
  /** Whole units by row and column. */
  readonly cells: readonly (readonly number[])[];
  /** Exact units due to each row from this table alone, by weight. */
  readonly due: readonly Fraction[];
  /** Units of each column that no row may take, because all its cells are locked. */
  readonly left: readonly number[];
  /**
   * Units beyond floor and ceiling that some cell had to go. Without locked cells it is nearly
   * always 0; about one small table in twenty thousand has largest-remainder totals that no such
   * cells add up to, like 12 and 8 units over weights 9, 3, 4, 4 and 4.
   */
  readonly beyond: number;
  /** Rows whose remainder was equal at the cut, so that only the listed order told them apart. */
  readonly tied: readonly number[];
  /** Rows that had to be given more than their due, since only they may take these columns. */
  readonly forced: readonly {
    readonly rows: readonly number[];
    readonly columns: readonly number[];
  }[];
}

/** @param table at least one row of weight 1 or more; locked units fit into their columns */
export function sharedTable(table: TableToShare): SharedTable {
  return new Sharing(table).share();
}

/** Rows and columns, by place, that are shared among themselves. */
interface Block {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

class Sharing {
  private readonly table: TableToShare;
  private readonly weightOfAll: number;
  private readonly due: readonly Fraction[];
  /** Units of each column that are not locked. */
  private readonly free: readonly number[];
  private readonly cells: number[][];
  private readonly tied: number[] = [];
  private readonly forced: Block[] = [];
  private beyond = 0;

  constructor(table: TableToShare) {
    this.table = table;
    this.weightOfAll = sum(table.rows.map((row) => row.weight));
    assert(this.weightOfAll > 0, 'somebody has a weight');
    const units = sum(table.columns);
    // One fraction each: reducing them is what costs time.
    this.due = table.rows.map(({ weight }) => new Fraction(units * weight, this.weightOfAll));
    this.cells = table.rows.map(({ locked }) => table.columns.map((_, at) => locked.get(at) ?? 0));
    this.free = table.columns.map((all, at) => all - sum(this.cells.map((row) => row[at] ?? 0)));
    assert(
      this.free.every((left) => left >= 0),
      'locked cells fit into their columns',
    );
  }

  share(): SharedTable {
    const rows = [...this.table.rows.keys()].filter((row) => this.rowOf(row).weight > 0);
    const isFree = (column: number) => rows.some((row) => this.mayTake(row, column));
    const columns = [...this.free.keys()].filter(isFree);
    this.shareBlock({ rows, columns });
    const left = this.free.map((units, column) => (isFree(column) ? 0 : units));
    const { cells, due, beyond, tied, forced } = this;
    return { cells, due, left, beyond, tied, forced };
  }

  /**
   * One block: rows first, then cells. Where some rows are due more than their open columns hold,
   * they take all of those, and both parts go on alone (the decomposition of Groenevelt, Two
   * algorithms for maximizing a separable concave function over a polymatroid feasible region,
   * European J. Oper. Res. 54, 1991, from memory): every total stays as near to its due as can be.
   */
  private shareBlock(block: Block): void {
    if (block.columns.length === 0) return;
    const { totals, tied } = this.rowTotals(block);
    const rounded = this.narrowest(block, totals);
    if (rounded.fits) {
      this.tied.push(...tied);
      this.beyond = Math.max(this.beyond, rounded.beyond);
      for (const [at, row] of block.rows.entries()) {
        for (const [place, column] of block.columns.entries()) {
          const cells = this.cells[row];
          if (cells !== undefined)
            cells[column] = (cells[column] ?? 0) + (rounded.cells[at]?.[place] ?? 0);
        }
      }
      return;
    }
    const rows = rounded.rows.map((at) => block.rows[at] ?? 0);
    const columns = block.columns.filter((column) => rows.some((row) => this.mayTake(row, column)));
    const others = {
      rows: block.rows.filter((row) => !rows.includes(row)),
      columns: block.columns.filter((column) => !columns.includes(column)),
    };
    assert(others.rows.length > 0 && columns.length > 0, 'a block falls into two smaller ones');
    this.forced.push(others);
    this.shareBlock({ rows, columns });
    this.shareBlock(others);
  }

  /** Units that each row of a block gets besides its locked cells. */
  private rowTotals({ rows, columns }: Block) {
    const targets = rows.map((row) => {
      const locked = sum([...this.rowOf(row).locked.values()]);
      const { aim, carried } = this.rowOf(row);
      if (aim !== undefined) return new Fraction(aim - locked);
      const wanted = carried.n === 0n ? this.dueOf(row) : this.dueOf(row).sub(carried);
      return locked === 0 ? wanted : wanted.sub(locked);
    });
    const most = rows.map((row) =>
      sum(columns.map((column) => (this.mayTake(row, column) ? this.freeOf(column) : 0))),
    );
    const total = sum(columns.map((column) => this.freeOf(column)));
    const bounds = { least: rows.map(() => 0), most };
    const { shares, tied } = nearestShares(total, targetsOf(targets), bounds);
    return { totals: shares, tied: tied.map((at) => rows[at] ?? 0) };
  }

  /** The table whose cells go the least number of units beyond floor and ceiling. */
  private narrowest(block: Block, totals: readonly number[]) {
    // So far beyond, no floor asks for a unit; locked cells can leave less free than the floor.
    const widest = Math.max(...block.columns.map((column) => this.table.columns[column] ?? 0));
    let wide = 0;
    let rounded = this.rounded(block, totals, wide);
    let narrow = -1;
    while (!rounded.fits && wide <= widest) {
      narrow = wide;
      wide = Math.max(1, wide * 2);
      rounded = this.rounded(block, totals, wide);
    }
    if (!rounded.fits) return rounded;
    while (wide - narrow > 1) {
      const middle = Math.floor((narrow + wide) / 2);
      const tried = this.rounded(block, totals, middle);
      if (tried.fits) rounded = tried;
      if (tried.fits) wide = middle;
      else narrow = middle;
    }
    return { ...rounded, beyond: wide };
  }

  /** The block rounded with cells up to so many units beyond the floor and ceiling. */
  private rounded(
    { rows, columns }: Block,
    totals: readonly number[],
    beyond: number,
  ): RoundedTable {
    const unit = this.weightOfAll;
    const of = <T>(value: (row: number, column: number) => T) =>
      rows.map((row) => columns.map((column) => value(row, column)));
    const share = (row: number, column: number) =>
      (this.table.columns[column] ?? 0) * this.rowOf(row).weight;
    return roundedTable({
      numerators: of(share),
      unit,
      rowTotals: totals,
      columnTotals: columns.map((column) => this.freeOf(column)),
      least: of((row, column) => {
        const floor = Math.floor(share(row, column) / unit) - beyond;
        return this.mayTake(row, column) ? Math.max(0, Math.min(floor, this.freeOf(column))) : 0;
      }),
      most: of((row, column) => {
        const ceiling = Math.ceil(share(row, column) / unit) + beyond;
        return this.mayTake(row, column) ? Math.min(ceiling, this.freeOf(column)) : 0;
      }),
    });
  }

  private mayTake(row: number, column: number): boolean {
    return !this.rowOf(row).locked.has(column);
  }

  private rowOf(row: number): RowToShare {
    const found = this.table.rows[row];
    assert(found !== undefined, 'a row of the table');
    return found;
  }

  private dueOf(row: number): Fraction {
    return this.due[row] ?? new Fraction(0);
  }

  private freeOf(column: number): number {
    return this.free[column] ?? 0;
  }
}

/** Floors and remainders by whole numbers alone: a fraction is `s n / d`, `n` and `d` above 0. */
function targetsOf(targets: readonly Fraction[]): Targets {
  const floors = targets.map(({ s, n, d }) => (s * n - (s < 0n ? d - 1n : 0n)) / d);
  const remainders = targets.map(({ s, n, d }, at) => s * n - (floors[at] ?? 0n) * d);
  return {
    floors: floors.map(Number),
    compareRemainders: (a, b) => {
      const first = (remainders[a] ?? 0n) * (targets[b]?.d ?? 1n);
      const second = (remainders[b] ?? 0n) * (targets[a]?.d ?? 1n);
      return first > second ? 1 : first < second ? -1 : 0;
    },
  };
}
