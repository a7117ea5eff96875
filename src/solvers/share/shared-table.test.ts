import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { nearestShares } from './nearest-shares.ts';
import {
  type RowToShare,
  type SharedTable,
  sharedTable,
  type TableToShare,
} from './shared-table.ts';

const NOTHING = new Fraction(0);

function row(weight: number, carried = NOTHING, locked: [number, number][] = []): RowToShare {
  return { weight, carried, locked: new Map(locked) };
}

const plain: fc.Arbitrary<TableToShare> = fc
  .record({
    columns: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 5 }),
    rows: fc.array(
      fc.integer({ min: 0, max: 9 }).map((weight) => row(weight)),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
  })
  .filter(({ rows }) => rows.some(({ weight }) => weight > 0));

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}

function rowSums({ cells }: Pick<SharedTable, 'cells'>): number[] {
  return cells.map(sum);
}

/** What must be true of every share-out without locked cells, as one word for the first fault. */
function fault(table: TableToShare, { cells }: Pick<SharedTable, 'cells'>): string {
  const all = sum(table.rows.map(({ weight }) => weight));
  const units = sum(table.columns);
  for (const [place, column] of table.columns.entries()) {
    if (sum(cells.map((each) => each[place] ?? 0)) !== column) return 'column';
  }
  const remainders = table.rows.map(({ weight }) => (units * weight) % all);
  const floors = table.rows.map(({ weight }) => Math.floor((units * weight) / all));
  const order = [...floors.keys()].sort(
    (a, b) => (remainders[b] ?? 0) - (remainders[a] ?? 0) || a - b,
  );
  const up = new Set(order.slice(0, units - sum(floors)));
  for (const [at, { weight }] of table.rows.entries()) {
    const total = sum(cells[at] ?? []);
    if (total !== (floors[at] ?? 0) + (up.has(at) ? 1 : 0)) return 'row';
    for (const [place, column] of table.columns.entries()) {
      const exact = (column * weight) / all;
      const cell = cells[at]?.[place] ?? 0;
      if (cell < Math.floor(exact) || cell > Math.ceil(exact)) return 'cell';
    }
  }
  return '';
}

/** Nothing wrong, or cells one beyond where no cells rounded down or up have these totals. */
function isFair(table: TableToShare, shared: SharedTable): boolean {
  const found = fault(table, shared);
  if (found === '') return shared.beyond === 0;
  return found === 'cell' && shared.beyond === 1 && !canBeRounded(table, rowSums(shared));
}

/** Whether cells rounded down or up can have these row totals: units moved by augmenting paths. */
function canBeRounded({ columns, rows }: TableToShare, totals: readonly number[]): boolean {
  const all = sum(rows.map(({ weight }) => weight));
  const isUp = rows.map(() => columns.map(() => false));
  const floor = (at: number, place: number) =>
    Math.floor(((columns[place] ?? 0) * (rows[at]?.weight ?? 0)) / all);
  const mayGoUp = (at: number, place: number) =>
    ((columns[place] ?? 0) * (rows[at]?.weight ?? 0)) % all !== 0;
  const ups = (column: number) => isUp.filter((each) => each[column]).length;
  const wanted = columns.map((units, place) => units - sum(rows.map((_, at) => floor(at, place))));
  const set = (at: number, place: number, up: boolean) => {
    const each = isUp[at];
    if (each !== undefined) each[place] = up;
  };
  const raiseRow = (at: number, seen: Set<number>): boolean => {
    for (const place of columns.keys()) {
      if (seen.has(place) || isUp[at]?.[place] === true || !mayGoUp(at, place)) continue;
      seen.add(place);
      const other =
        ups(place) < (wanted[place] ?? 0)
          ? -1
          : [...rows.keys()].find((row) => isUp[row]?.[place] === true && raiseRow(row, seen));
      if (other === undefined) continue;
      if (other >= 0) set(other, place, false);
      set(at, place, true);
      return true;
    }
    return false;
  };
  return rows.every((_, at) => {
    const floors = sum(columns.map((_units, place) => floor(at, place)));
    const missing = (totals[at] ?? 0) - floors;
    return missing >= 0 && Array.from({ length: missing }).every(() => raiseRow(at, new Set()));
  });
}

describe('a share-out', () => {
  it('gives out every product whole, by largest remainder, each cell rounded down or up', () => {
    fc.assert(
      fc.property(plain, (table) => isFair(table, sharedTable(table))),
      { numRuns: 2000 },
    );
  });

  it('goes one beyond where no rounded cells have the totals of largest remainder', () => {
    // Due are 7.5, 2.5 and three times 3 1/3, so the totals are 8, 3, 3, 3 and 3. Exact shares of
    // the eight are 3 and 1 for the first two: of the twelve they would get 5 and 2 for their
    // totals, and the others get exactly 2 each: 13.
    const table = { columns: [12, 8], rows: [row(9), row(3), row(4), row(4), row(4)] };
    const shared = sharedTable(table);
    expect(rowSums(shared)).toEqual([8, 3, 3, 3, 3]);
    expect(fault(table, shared)).toBe('cell');
    expect(shared.beyond).toBe(1);
    expect(canBeRounded(table, [8, 3, 3, 3, 3])).toBe(false);
    expect(canBeRounded(table, [7, 3, 4, 3, 3])).toBe(true);
    expect(
      isFair(
        { columns: [5, 5], rows: [row(1), row(1)] },
        {
          ...shared,
          cells: [
            [5, 0],
            [0, 5],
          ],
        },
      ),
    ).toBe(false);
  });

  it('is caught by that property when it only conserves: 10 over 6, 6 and 2', () => {
    const table = { columns: [10], rows: [row(6), row(6), row(2)] };
    expect(fault(table, sharedTable(table))).toBe('');
    expect(fault(table, { cells: [[5], [4], [1]] })).toBe('row');
    expect(fault(table, { cells: [[4], [4], [1]] })).toBe('column');
    const two = { columns: [5, 5], rows: [row(1), row(1)] };
    expect(
      fault(two, {
        cells: [
          [5, 0],
          [0, 5],
        ],
      }),
    ).toBe('cell');
  });

  it('takes of all such tables the one with the least squares', () => {
    // Exact shares are 1.2, 2.4, 2.4 of six and 0.6, 1.2, 1.2 of three.
    const { cells } = sharedTable({ columns: [6, 3], rows: [row(1), row(2), row(2)] });
    expect(cells).toEqual([
      [1, 1],
      [3, 1],
      [2, 1],
    ]);
  });

  it('carries on what earlier ones owed, so that nobody is always rounded down', () => {
    const columns = [1];
    const carried = [NOTHING, NOTHING, NOTHING];
    const had = [0, 0, 0];
    for (let turn = 0; turn < 30; turn += 1) {
      const shared = sharedTable({ columns, rows: carried.map((each) => row(1, each)) });
      for (const [at, total] of rowSums(shared).entries()) {
        had[at] = (had[at] ?? 0) + total;
        carried[at] = (carried[at] ?? NOTHING).add(total).sub(shared.due[at] ?? NOTHING);
        expect(carried[at]?.abs().compare(1)).toBeLessThan(0);
      }
    }
    expect(had).toEqual([10, 10, 10]);
  });

  it('says which rows only their order told apart', () => {
    expect(sharedTable({ columns: [2], rows: [row(1), row(1), row(1)] }).tied).toEqual([0, 1, 2]);
    expect(sharedTable({ columns: [10], rows: [row(6), row(6), row(2)] }).tied).toEqual([]);
  });
});

describe('locked cells', () => {
  const locking = plain.chain((table) =>
    fc
      .array(fc.array(fc.option(fc.integer({ min: 0, max: 3 })), { maxLength: 5 }), {
        minLength: table.rows.length,
        maxLength: table.rows.length,
      })
      .map((locks) => withLocks(table, locks)),
  );

  it('stay as they are; the rest is given out whole around them', () => {
    fc.assert(
      fc.property(locking, (table) => {
        const shared = sharedTable(table);
        const places = [...table.columns.keys()];
        const areKept = table.rows.every(({ locked }, at) =>
          [...locked].every(([place, units]) => shared.cells[at]?.[place] === units),
        );
        const areWhole = places.every((place) => {
          const given = sum(shared.cells.map((cells) => cells[place] ?? 0));
          return given + (shared.left[place] ?? 0) === table.columns[place];
        });
        const isLeftOnlyWhereLocked = places.every(
          (place) =>
            (shared.left[place] ?? 0) === 0 ||
            table.rows.every(({ weight, locked }) => weight === 0 || locked.has(place)),
        );
        return areKept && areWhole && isLeftOnlyWhereLocked;
      }),
      { numRuns: 2000 },
    );
  });

  it('leave totals that no unit moved to another row would bring nearer to what is due', () => {
    fc.assert(
      fc.property(locking, (table) => !canImprove(table, sharedTable(table))),
      { numRuns: 1000 },
    );
  });

  it('would be caught giving a free unit to the wrong row', () => {
    const table = { columns: [4], rows: [row(1), row(1), row(1, NOTHING, [[0, 0]])] };
    expect(canImprove(table, sharedTable(table))).toBe(false);
    expect(canImprove(table, { ...sharedTable(table), cells: [[4], [0], [0]] })).toBe(true);
  });

  it('may leave less of a column free than the floors of those who share it', () => {
    const table = {
      columns: [6, 9, 9],
      rows: [
        row(0, NOTHING, [[1, 2]]),
        row(5, NOTHING, [[1, 0]]),
        row(1, NOTHING, [[2, 2]]),
        row(0, NOTHING, [
          [0, 2],
          [1, 3],
          [2, 3],
        ]),
        row(8, NOTHING, [[0, 0]]),
        row(1, NOTHING, [
          [0, 3],
          [1, 3],
          [2, 3],
        ]),
      ],
    };
    const shared = sharedTable(table);
    expect(shared.cells.map((cells) => cells.join(' '))).toEqual([
      '0 2 0',
      '1 0 0',
      '0 0 2',
      '2 3 3',
      '0 1 1',
      '3 3 3',
    ]);
    expect(shared.forced).toEqual([]);
  });

  it('that leave a column to few rows force those, and say so', () => {
    const table = {
      columns: [6, 2],
      rows: [row(1), row(1, NOTHING, [[0, 0]]), row(1, NOTHING, [[0, 0]])],
    };
    const shared = sharedTable(table);
    expect(shared.cells).toEqual([
      [6, 0],
      [0, 1],
      [0, 1],
    ]);
    expect(shared.forced).toEqual([{ rows: [0], columns: [0] }]);
  });

  it('that fill every place of a column leave its rest', () => {
    const locked: [number, number][] = [[0, 1]];
    const rows = [row(1, NOTHING, locked), row(1, NOTHING, locked)];
    expect(sharedTable({ columns: [5], rows }).left).toEqual([3]);
  });
});

describe('nearest shares', () => {
  const targets = (values: readonly number[]) => ({
    floors: values.map(Math.floor),
    compareRemainders: (a: number, b: number) =>
      (values[a] ?? 0) -
      Math.floor(values[a] ?? 0) -
      ((values[b] ?? 0) - Math.floor(values[b] ?? 0)),
  });

  it('raise or lower all alike where the targets do not add up', () => {
    const free = { least: [0, 0, 0], most: [9, 9, 9] };
    expect(nearestShares(9, targets([1.5, 2.25, 0]), free).shares).toEqual([3, 4, 2]);
    expect(nearestShares(1, targets([1.5, 2.25, 0]), free).shares).toEqual([0, 1, 0]);
  });

  it('keep to the bounds', () => {
    const bounds = { least: [0, 3, 0], most: [1, 9, 9] };
    expect(nearestShares(6, targets([4, 1, 1]), bounds).shares).toEqual([1, 3, 2]);
  });
});

function withLocks(table: TableToShare, locks: readonly (readonly (number | null)[])[]) {
  const spare = [...table.columns];
  const rows = table.rows.map((each, at) => {
    const locked = new Map<number, number>();
    for (const [place, units] of (locks[at] ?? []).entries()) {
      if (units === null || place >= spare.length || units > (spare[place] ?? 0)) continue;
      locked.set(place, units);
      spare[place] = (spare[place] ?? 0) - units;
    }
    return { ...each, locked };
  });
  return { columns: table.columns, rows };
}

/** Whether some chain of swaps moves a unit from one row to another and brings totals nearer. */
function canImprove(table: TableToShare, { cells, due }: SharedTable): boolean {
  const mayTake = (at: number, place: number) =>
    (table.rows[at]?.weight ?? 0) > 0 && table.rows[at]?.locked.has(place) === false;
  const above = cells.map((each, at) => new Fraction(sum(each)).sub(due[at] ?? NOTHING));
  for (const from of cells.keys()) {
    const reached = new Set([from]);
    for (const at of reached) {
      for (const [place, units] of (cells[at] ?? []).entries()) {
        if (units === 0 || !mayTake(at, place)) continue;
        for (const to of cells.keys()) if (mayTake(to, place)) reached.add(to);
      }
    }
    for (const to of reached) {
      if ((above[from] ?? NOTHING).sub(above[to] ?? NOTHING).compare(1) > 0) return true;
    }
  }
  return false;
}
