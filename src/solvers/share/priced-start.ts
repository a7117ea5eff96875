/**
 * A start for a table whose cells are each rounded down or up: in every row as many cells rounded
 * up as its total wants, chosen by remainder less a price of the column, with the prices set one
 * column after the other so that each comes out nearly right (the auction of Bertsekas, Linear
 * Network Optimization, 1991, by columns; from memory). Whatever the prices, such a start costs
 * least for the column sums that it happens to have, so moving units from it stays exact.
 */
export interface StartToFind {
  readonly rows: number;
  readonly columns: number;
  /** Remainders by row and column in one array. */
  readonly remainders: Float64Array;
  /** 1 where a cell may be rounded up, by row and column. */
  readonly free: Uint8Array;
  /** How many cells of each row, and of each column, are to be rounded up. */
  readonly rowWants: Float64Array;
  readonly columnWants: Float64Array;
}

/** @returns 1 where a cell is rounded up; rows are right, columns nearly */
export function pricedStart(start: StartToFind): Uint8Array {
  const work = new PricedStart(start);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let hasChanged = false;
    for (let column = 0; column < start.columns; column += 1) {
      if (work.price(column)) hasChanged = true;
    }
    if (!hasChanged) break;
  }
  return work.up;
}

/** After so many the last few units are moved quicker one by one. */
const SWEEPS = 4;

class PricedStart {
  readonly up: Uint8Array;
  private readonly given: StartToFind;
  /** Remainder less price, by row and column; minus infinity where a cell is not free. */
  private readonly values: Float64Array;
  private readonly prices: Float64Array;
  /** Scratch, by row: the price at which it would just take the column, and what it swaps for. */
  private readonly takes: Float64Array;
  private readonly partner: Int32Array;

  constructor(given: StartToFind) {
    this.given = given;
    this.up = new Uint8Array(given.rows * given.columns);
    this.values = given.remainders.map((value, at) => (given.free[at] === 1 ? value : NEVER));
    this.prices = new Float64Array(given.columns);
    this.takes = new Float64Array(given.rows);
    this.partner = new Int32Array(given.rows);
    for (let row = 0; row < given.rows; row += 1) this.chooseLargest(row);
  }

  private chooseLargest(row: number): void {
    const start = row * this.given.columns;
    for (let count = this.given.rowWants[row] ?? 0; count > 0; count -= 1) {
      let best = -1;
      let value = NEVER;
      for (let at = start; at < start + this.given.columns; at += 1) {
        if (this.up[at] === 1 || (this.values[at] ?? NEVER) <= value) continue;
        value = this.values[at] ?? NEVER;
        best = at;
      }
      if (best >= 0) this.up[best] = 1;
    }
  }

  /** Sets a column's price so that as many rows take it as it wants; true where a row changed. */
  price(column: number): boolean {
    const { rows, columnWants } = this.given;
    for (let row = 0; row < rows; row += 1) this.weigh(row, column);
    const sorted = this.takes.toSorted();
    const wants = columnWants[column] ?? 0;
    // Sorted from the smallest: the last so many take it, the one before does not.
    const last = sorted[rows - wants] ?? Number.POSITIVE_INFINITY;
    const next = sorted[rows - wants - 1] ?? NEVER;
    const price = between(next, last);
    if (price === undefined) return false;
    let hasChanged = false;
    for (let row = 0; row < rows; row += 1) {
      if (this.settle(row, column, price)) hasChanged = true;
    }
    this.prices[column] = price;
    return hasChanged;
  }

  /** Finds the price at which a row stops taking a column, other prices being as they are. */
  private weigh(row: number, column: number): void {
    const { columns, remainders, free } = this.given;
    const start = row * columns;
    const at = start + column;
    this.partner[row] = -1;
    this.takes[row] = NEVER;
    if (free[at] !== 1) return;
    const isUp = this.up[at] === 1;
    let edge = isUp ? NEVER : Number.POSITIVE_INFINITY;
    let partner = -1;
    for (let other = start; other < start + columns; other += 1) {
      if (other === at || free[other] !== 1 || (this.up[other] === 1) === isUp) continue;
      const value = this.values[other] ?? NEVER;
      if (isUp ? value > edge : value < edge) {
        edge = value;
        partner = other;
      }
    }
    this.partner[row] = partner;
    this.takes[row] = (remainders[at] ?? 0) - edge;
  }

  private settle(row: number, column: number, price: number): boolean {
    const at = row * this.given.columns + column;
    if (this.given.free[at] !== 1) return false;
    this.values[at] = (this.given.remainders[at] ?? 0) - price;
    const isWanted = (this.takes[row] ?? NEVER) > price;
    const partner = this.partner[row] ?? -1;
    if (isWanted === (this.up[at] === 1) || partner === -1) return false;
    this.up[at] = isWanted ? 1 : 0;
    this.up[partner] = isWanted ? 0 : 1;
    return true;
  }
}

const NEVER = Number.NEGATIVE_INFINITY;

/** A price between two, where one of them may be without end; none where both are. */
function between(low: number, high: number): number | undefined {
  const isLow = Number.isFinite(low);
  const isHigh = Number.isFinite(high);
  if (isLow && isHigh) return (low + high) / 2;
  if (isHigh) return high - 1;
  return isLow ? low + 1 : undefined;
}
