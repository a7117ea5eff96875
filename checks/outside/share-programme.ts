import type { SharedTable, TableToShare } from '../../src/solvers/share/shared-table.ts';

/**
 * A share-out as an integer programme in LP format: which cells are rounded up, at given row
 * totals. Written apart from the solver that it checks. Its optimum is the least sum over the cells
 * rounded up of weight of all less twice the remainder: the squares, but for what no choice
 * changes.
 */
export function shareProgramme(
  { columns, rows }: TableToShare,
  totals: readonly number[],
  relaxed = false,
): string {
  const all = rows.reduce((sum, row) => sum + row.weight, 0);
  const objective: string[] = [];
  const names: string[] = [];
  const byRow = rows.map(() => [] as string[]);
  const byColumn = columns.map(() => [] as string[]);
  const wholes = { rows: rows.map(() => 0), columns: columns.map(() => 0) };
  for (const [at, { weight }] of rows.entries()) {
    for (const [place, units] of columns.entries()) {
      const floor = Math.floor((units * weight) / all);
      wholes.rows[at] = (wholes.rows[at] ?? 0) + floor;
      wholes.columns[place] = (wholes.columns[place] ?? 0) + floor;
      const remainder = (units * weight) % all;
      if (remainder === 0) continue;
      const name = `y${at}_${place}`;
      objective.push(
        `${all - 2 * remainder >= 0 ? '+' : '-'} ${Math.abs(all - 2 * remainder)} ${name}`,
      );
      names.push(name);
      byRow[at]?.push(name);
      byColumn[place]?.push(name);
    }
  }
  if (names.length === 0) return 'Minimize\n obj: 0 none\nSubject To\n c: none = 0\nEnd\n';
  const line = (terms: readonly string[], total: number) =>
    terms.length === 0 ? [] : [`${terms.join(' + ')} = ${total}`];
  const constraints = [
    ...byRow.flatMap((terms, at) => line(terms, (totals[at] ?? 0) - (wholes.rows[at] ?? 0))),
    ...byColumn.flatMap((terms, at) => line(terms, (columns[at] ?? 0) - (wholes.columns[at] ?? 0))),
  ];
  return [
    'Minimize',
    ` obj: ${objective.join(' ')}`,
    'Subject To',
    ...constraints.map((text, at) => ` c${at}: ${text}`),
    ...(relaxed ? ['Bounds', ...names.map((name) => ` 0 <= ${name} <= 1`)] : ['Binary', ...names]),
    'End',
    '',
  ].join('\n');
}

/** The same sum for a table that was found. */
export function shareCost({ columns, rows }: TableToShare, { cells }: SharedTable): number {
  const all = rows.reduce((sum, row) => sum + row.weight, 0);
  let cost = 0;
  for (const [at, { weight }] of rows.entries()) {
    for (const [place, units] of columns.entries()) {
      const exact = units * weight;
      const isUp = (cells[at]?.[place] ?? 0) > Math.floor(exact / all);
      if (isUp) cost += all - 2 * (exact % all);
    }
  }
  return cost;
}
