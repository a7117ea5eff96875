import { describe, expect, it } from 'vitest';
import { roundedTable } from '../../src/solvers/share/rounded-table.ts';
import proportional from './data/biproportional-cases.json' with { type: 'json' };
import controlled from './data/controlled-rounding-cases.json' with { type: 'json' };

/**
 * Rounded tables against published ones: controlled rounding (each cell and margin at an adjacent
 * multiple, zeros kept, least distance), and the seats of parliaments elected by double
 * proportionality, whose exact quotas rounded to their margins are the published seats. Sources are
 * in data/*.json beside each table.
 */

/** Digits after the point that an exact share is kept to. */
const PARTS = 1_000_000_000;

interface Rounding {
  readonly shares: readonly (readonly number[])[];
  readonly rowTotals: readonly number[];
  readonly columnTotals: readonly number[];
}

function rounded({ shares, rowTotals, columnTotals }: Rounding) {
  const of = (value: (share: number) => number) => shares.map((row) => row.map(value));
  return roundedTable({
    numerators: of((share) => Math.round(share * PARTS)),
    unit: PARTS,
    rowTotals,
    columnTotals,
    least: of(Math.floor),
    most: of(Math.ceil),
  });
}

function sums(cells: readonly (readonly number[])[]) {
  const rows = cells.map((row) => row.reduce((sum, cell) => sum + cell, 0));
  const columns = (cells[0] ?? []).map((_, at) =>
    cells.reduce((sum, row) => sum + (row[at] ?? 0), 0),
  );
  return { rows, columns };
}

describe('controlled rounding', () => {
  it.each(controlled)('$id comes out within the bounds and as published', (table) => {
    const shares = table.table.map((row) => row.map((cell) => Number(cell) / table.base));
    const rowTotals = (table.rowTotals ?? table.rows).map((total) => Number(total) / table.base);
    const columnTotals = (table.columnTotals ?? table.columns).map(
      (total) => Number(total) / table.base,
    );
    const found = rounded({ shares, rowTotals, columnTotals });
    if (!found.fits) throw new Error('no rounding');
    expect(sums(found.cells)).toEqual({ rows: rowTotals, columns: columnTotals });
    for (const [row, cells] of found.cells.entries()) {
      for (const [column, cell] of cells.entries()) {
        expect(Math.abs(cell - (shares[row]?.[column] ?? 0))).toBeLessThan(1);
      }
    }
    // Both published tables are legal; the nearest one is what the method promises.
    const nearest = table.nearest ?? undefined;
    if (nearest !== undefined) expect(found.cells).toEqual(nearest);
    const published = table.published.map((row) => row.map((cell) => cell / table.base));
    expect(distance(found.cells, shares)).toBeLessThanOrEqual(distance(published, shares) + 1e-9);
  });
});

describe('double proportionality', () => {
  it.each(proportional)('$id: quotas rounded to their margins are the seats', (election) => {
    const { votes, rowTotals, columnTotals, seats } = election;
    const shares = quotas(votes, rowTotals, columnTotals);
    const found = rounded({ shares, rowTotals, columnTotals });
    expect(found.fits && found.cells).toEqual(seats);
  });

  it('says which rows and columns want more of each other than there is', () => {
    // github polettif/proporz, tests/testthat/test-biproportional-errors.R: party 3 needs 6 seats
    // in districts 2 and 3, which have 4.
    const found = roundedTable({
      numerators: [
        [0, 0, 0],
        [1, 4, 0],
        [0, 3, 20],
      ],
      unit: 10,
      rowTotals: [0, 2, 6],
      columnTotals: [4, 1, 3],
      least: [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
      most: [
        [0, 0, 0],
        [4, 1, 0],
        [0, 1, 3],
      ],
    });
    expect(found.fits).toBe(false);
    expect(found.fits || found.rows).toContain(2);
  });
});

function distance(cells: readonly (readonly number[])[], shares: readonly (readonly number[])[]) {
  return cells.reduce(
    (sum, row, at) =>
      sum + row.reduce((all, cell, place) => all + (cell - (shares[at]?.[place] ?? 0)) ** 2, 0),
    0,
  );
}

/**
 * Quotas whose rounding, cell by cell, meets the margins: divisors found by scaling rows and
 * columns in turn until they do (alternating scaling, Pukelsheim).
 */
function quotas(
  votes: readonly (readonly number[])[],
  rowTotals: readonly number[],
  columnTotals: readonly number[],
): number[][] {
  const total = columnTotals.reduce((sum, seats) => sum + seats, 0);
  const all = votes.flat().reduce((sum, vote) => sum + vote, 0);
  const rows = rowTotals.map(() => total / all);
  const columns = columnTotals.map(() => 1);
  const quota = (row: number, column: number) =>
    (votes[row]?.[column] ?? 0) * (rows[row] ?? 0) * (columns[column] ?? 0);
  const places = { rows: [...rowTotals.keys()], columns: [...columnTotals.keys()] };
  for (let turn = 0; turn < 500; turn += 1) {
    for (const column of places.columns) {
      const of = (row: number) => quota(row, column);
      columns[column] = (columns[column] ?? 1) * factor(places.rows.map(of), columnTotals[column]);
    }
    for (const row of places.rows) {
      const of = (column: number) => quota(row, column);
      rows[row] = (rows[row] ?? 1) * factor(places.columns.map(of), rowTotals[row]);
    }
  }
  return places.rows.map((row) => places.columns.map((column) => quota(row, column)));
}

/** What quotas are multiplied by so that, rounded, they add up: the middle of what does. */
function factor(values: readonly number[], total = 0): number {
  const sumAt = (times: number) =>
    values.reduce((sum, value) => sum + Math.round(value * times), 0);
  if (sumAt(1) === total || total === 0) return 1;
  const edge = (isBelow: (sum: number) => boolean) => {
    let low = 0;
    let high = 1;
    while (isBelow(sumAt(high)) && high < 1e9) high *= 2;
    for (let turn = 0; turn < 60; turn += 1) {
      const middle = (low + high) / 2;
      if (isBelow(sumAt(middle))) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return (edge((sum) => sum < total) + edge((sum) => sum <= total)) / 2;
}
