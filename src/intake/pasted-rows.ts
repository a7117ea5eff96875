import type { Finding } from './finding.ts';

/**
 * A list as it is pasted from a spreadsheet (its cells come from text-cells.ts), with or without a
 * header row, columns in any order. Reading gives rows; what they would become is proposed with
 * findings a cell, so that a person fixes them in the preview before anything is saved.
 */

/** The cells of one row as they stand in the preview; `line` is its row in the text, from 1. */
export type PastedRow<Column extends string> = { readonly line: number } & Readonly<
  Record<Column, string>
>;

export interface PastedRows<Column extends string> {
  readonly rows: readonly PastedRow<Column>[];
  /** Headings of columns that are not kept, like birthdays or telephone numbers. */
  readonly notKept: readonly string[];
}

export interface Proposed<Column extends string> {
  readonly cells: PastedRow<Column>;
  /** `new` is saved; `already` is in the book or earlier in the list; `fix` waits for a person. */
  readonly state: 'new' | 'already' | 'fix';
  readonly findings: readonly Finding[];
}

/** How the columns of a list are told apart. */
export interface ListColumns<Column extends string> {
  /** The words of headings, the most telling first. */
  readonly headings: readonly (readonly [Column, RegExp])[];
  /** Without this one among them a first row is no row of headings. */
  readonly needed: Column;
  /** The meaning of each column by its cells, where no headings say it. */
  bare(rows: readonly string[][]): (Column | undefined)[];
}

/** One row of the text: the cell of a column, empty where there is none. */
export interface TextRow<Column extends string> {
  readonly line: number;
  at(column: Column): string;
}

/** Where a row's person or thing is already. */
export type Twin = 'the book' | 'the list';

/** Names of people and things have at most so many characters. */
export const NAME_MAX = 200;

/** Finds the rows and columns of pasted cells. What cannot be understood stays in its cell. */
export function textRows<Column extends string>(
  pasted: readonly (readonly string[])[],
  columns: ListColumns<Column>,
): { readonly rows: readonly TextRow<Column>[]; readonly notKept: readonly string[] } {
  const table = pasted
    .map((cells, at) => ({ line: at + 1, cells: cells.map((cell) => tidy(cell)) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const headings = table[0]?.cells ?? [];
  const named = columnsOf(headings, columns);
  const order = named ?? columns.bare(table.map(({ cells }) => cells));
  const body = named === undefined ? table : table.slice(1);
  const rows = body.map(({ line, cells }) => ({
    line,
    at: (column: Column) => cells[order.indexOf(column)] ?? '',
  }));
  const notKept =
    named === undefined ? [] : headings.filter((heading, at) => heading !== '' && !named[at]);
  return { rows, notKept };
}

function tidy(cell: string): string {
  return cell.normalize('NFC').replace(/\s+/gu, ' ').trim();
}

/** The meaning of each column where the first row is a heading; undefined where it is data. */
function columnsOf<Column extends string>(
  headings: readonly string[],
  { headings: words, needed }: ListColumns<Column>,
): (Column | undefined)[] | undefined {
  const columns = headings.map((heading) => {
    const plain = heading.toLowerCase();
    return words.find(([, pattern]) => pattern.test(plain))?.[0];
  });
  // Two columns of one meaning: the first counts.
  const once = columns.map((column, at) => (columns.indexOf(column) === at ? column : undefined));
  const enough = once.includes(needed) && (once.length === 1 || once.some((c) => c !== needed));
  return enough && looksLikeHeadings(headings) ? once : undefined;
}

/** A number, with the sign of a currency or without, is never a heading. */
function looksLikeHeadings(cells: readonly string[]): boolean {
  return !cells.some((cell) => /^[^\p{L}]*\d[^\p{L}]*$/u.test(cell));
}

/** Whole units; thousands may be set apart by a space, comma or apostrophe. */
export function pastedWhole(text: string): number | undefined | 'unclear' {
  if (text === '') return undefined;
  if (!/^(?:\d{1,7}|\d{1,3}(?:[ ,'’]\d{3}){1,2})$/u.test(text)) return 'unclear';
  return Number(text.replace(/\D/gu, ''));
}

/** Names are the same whatever their case, width and the point after an initial. */
export function nameKey(name: string): string {
  return name.normalize('NFKC').toLowerCase().replace(/\.$/u, '').trim();
}

/** What is found about one row's cells, in the order in which it is found. */
export class RowFindings<Column extends string> {
  readonly list: Finding[] = [];
  readonly #cells: PastedRow<Column>;

  constructor(cells: PastedRow<Column>) {
    this.#cells = cells;
  }

  add(field: Column, wanted: string, severity: Finding['severity'] = 'error'): void {
    const said = this.#cells[field];
    this.list.push({ line: this.#cells.line, field, said, wanted, severity });
  }

  /** Says that what the row names is there already. */
  addTwin(field: Column, twin: Twin): void {
    this.add(field, `already in ${twin}, so this row is left out`, 'warning');
  }

  /** True where nothing waits for a person. */
  get usable(): boolean {
    return this.list.every(({ severity }) => severity === 'warning');
  }
}
