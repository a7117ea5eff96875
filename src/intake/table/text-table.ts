import type { FileRefusal } from './file-refusal.ts';

/** A table from outside as text: the heads and the rows below them, each with its place. */
export interface TextTable {
  readonly heads: readonly string[];
  readonly rows: readonly TableRow[];
  /** Line of the heads in the file, from 1. */
  readonly headLine: number;
}

export interface TableRow {
  readonly cells: readonly string[];
  /** Line of the row in the file, from 1 (rows that hold line breaks count as one). */
  readonly at: number;
}

/**
 * The heads are the first line with at least two names and at least as many as any line before the
 * data needs; what a bank or supplier writes above them is left out, and so are empty rows.
 */
export function tableOf(cells: readonly (readonly string[])[]): TextTable | undefined {
  const first = cells.findIndex((row) => row.filter(isName).length >= 2);
  const heads = cells[first];
  if (heads === undefined) return undefined;
  const rows = cells
    .map((row, index) => ({ cells: row.map((cell) => cell.trim()), at: index + 1 }))
    .slice(first + 1)
    .filter((row) => row.cells.some((cell) => cell !== ''));
  return { heads: heads.map((head) => head.trim()), rows, headLine: first + 1 };
}

function isName(cell: string): boolean {
  return /\p{L}/u.test(cell);
}

/** Why the file was cut off: its last row alone has fewer cells than the heads. */
export function cutOffRow({ heads, rows }: TextTable): FileRefusal | undefined {
  const last = rows.at(-1);
  if (last === undefined || last.cells.length >= heads.length) return undefined;
  if (rows.length === 1 || rows.slice(0, -1).some(({ cells }) => cells.length < heads.length)) {
    return undefined;
  }
  const said = `${last.cells.length} of ${heads.length} cells: ${last.cells.join(', ')}`;
  return { line: last.at, field: '', said, wanted: 'the whole file; this one is cut off' };
}

/** The cells of one column. */
export function cellsOf({ heads, rows }: TextTable, head: string | undefined): string[] {
  if (head === undefined) return [];
  const at = heads.indexOf(head);
  return rows.map(({ cells }) => cells[at] ?? '');
}

/** The cell of a row by its head; empty where there is no such column. */
export function cellReader({ heads }: TextTable, row: TableRow): (head?: string) => string {
  return (head) => (head === undefined ? '' : (row.cells[heads.indexOf(head)] ?? ''));
}
