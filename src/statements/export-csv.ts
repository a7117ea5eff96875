import Papa from 'papaparse';
import { minorDigits } from '../base/currency.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { decimalText } from './decimal-text.ts';
import { type RecordRow, recordRows, rowValues } from './record-rows.ts';

/**
 * Every record as comma-separated values (RFC 4180: CRLF, quotes doubled), a row for each line.
 * Text that a spreadsheet could take for a formula gets an apostrophe before it (OWASP "CSV
 * injection"); a number stays a number, also a negative one. Comes in pieces.
 */
export function* exportCsv(ledger: Ledger): Generator<string> {
  const digits = minorDigits(ledger.setup.season?.currency ?? '');
  let cells: CsvCell[][] = [csvHeads.slice()];
  for (const row of recordRows(ledger)) {
    cells.push(cellsOf(row, digits));
    if (cells.length < PIECE_ROWS) continue;
    yield csvText(cells);
    cells = [];
  }
  if (cells.length > 0) yield csvText(cells);
}

const PIECE_ROWS = 1_000;

export type CsvCell = string | number;

/**
 * Starts that make a spreadsheet calculate (OWASP's list, with the full-width forms). A minus
 * before nothing but a decimal number is that number. The library's own pattern misses texts of
 * several lines.
 */
const FORMULA = /^(?:[=+@\t\r\n＝＋－＠]|-(?!\d+(?:\.\d+)?$))/;

/** Rows as CSV text, each ending in CRLF. */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  const text = Papa.unparse(rows as CsvCell[][], { newline: '\r\n', escapeFormulae: FORMULA });
  return `${text}\r\n`;
}

const csvHeads = [
  'record',
  'written',
  'by',
  'counts',
  'kind',
  'date',
  'about',
  'part',
  'product',
  'units',
  'price',
  'amount',
  'way',
  'reference',
  'points at',
  'text',
] as const;

function cellsOf(row: RecordRow, digits: number): CsvCell[] {
  return rowValues(row).map((value) => {
    if (typeof value === 'string') return value;
    if (value.whole === undefined) return '';
    return value.of === 'money' ? decimalText(value.whole, digits) : value.whole;
  });
}
