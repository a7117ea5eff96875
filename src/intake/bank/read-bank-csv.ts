import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from '../table/amount-text.ts';
import { csvTable } from '../table/csv-table.ts';
import { dayOf } from '../table/day-cell.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { fittingColumns } from '../table/fitting-columns.ts';
import { cellReader, cutOffRow, type TextTable } from '../table/text-table.ts';
import type { BankFile, BankLine } from './bank-file.ts';
import { type BankColumns, goesOut, guessColumns } from './csv-columns.ts';

/** What may be said of a CSV file beforehand: all columns, or only how its days are written. */
export interface BankCsvSaid {
  readonly columns?: BankColumns | undefined;
  readonly days?: BankColumns['days'] | undefined;
}

/**
 * A bank statement as CSV (RFC 4180, also with semicolons or tabs), read by columns that the user
 * has saved or, without them, by a guess from the heads.
 */
export function readBankCsv(
  text: string,
  currency: string,
  said: BankCsvSaid = {},
): Outcome<BankFile & { readonly columns: BankColumns }, FileRefusal> {
  const table = csvTable(text);
  if (table === undefined) {
    return refused({ line: 1, field: '', said: 'no line with column names', wanted: 'a CSV file' });
  }
  const columns = columnsFor(table, said);
  if (!columns.ok) return columns;
  const cut = cutOffRow(table);
  if (cut !== undefined) return refused(cut);
  const lines: BankLine[] = [];
  const balances: BalanceAfter[] = [];
  for (const [index, row] of table.rows.entries()) {
    const cell = cellReader(table, row);
    const line = bankLine(cell, columns.value, currency, { line: index + 1, at: row.at });
    if (!line.ok) return line;
    if (line.value.cents === 0) continue;
    lines.push(line.value);
    const minor = amountMinor(cell(columns.value.balance), currency, columns.value.decimals);
    if (minor !== undefined) balances.push({ ...line.value, minor });
  }
  return done({ lines, ...endsOf(balances), currency, columns: columns.value });
}

function columnsFor(table: TextTable, said: BankCsvSaid): Outcome<BankColumns, FileRefusal> {
  const guess = said.columns ?? guessColumns(table);
  const wanted = 'columns for a date and an amount';
  return fittingColumns(table, guess, namesOf, { days: said.days, wanted });
}

function namesOf(columns: Omit<BankColumns, 'days'>): string[] {
  const { text = [], date, amount, paidIn, paidOut, direction, reference, balance } = columns;
  const single = [date, amount, paidIn, paidOut, direction, reference, balance];
  return [...single, ...text].flatMap((name) => name ?? []);
}

function bankLine(
  cell: (head: string | undefined) => string,
  columns: BankColumns,
  currency: string,
  place: { readonly line: number; readonly at: number },
): Outcome<BankLine, FileRefusal> {
  const date = dayOf(cell(columns.date), columns.days);
  if (date === undefined) {
    const wanted = `a day as ${columns.days}`;
    return refused({ line: place.at, field: columns.date, said: cell(columns.date), wanted });
  }
  const amount = (head: string | undefined) =>
    cell(head) === '' ? 0 : amountMinor(cell(head), currency, columns.decimals);
  const paidOut = amount(columns.paidOut);
  const parts = [amount(columns.amount), amount(columns.paidIn), paidOut];
  if (parts.includes(undefined) || paidOut === undefined) {
    const heads = [columns.amount, columns.paidIn, columns.paidOut];
    const wrong = heads[parts.indexOf(undefined)] ?? '';
    const wanted = `an amount in ${currency}`;
    return refused({ line: place.at, field: wrong, said: cell(wrong), wanted });
  }
  const signed = goesOut(cell(columns.direction)) ? -Math.abs(parts[0] ?? 0) : (parts[0] ?? 0);
  const cents = signed + (parts[1] ?? 0) - Math.abs(paidOut);
  const text = (columns.text ?? [])
    .map(cell)
    .filter((words) => words !== '')
    .join(' ');
  const reference = cell(columns.reference) === '' ? undefined : cell(columns.reference);
  return done({ line: place.line, date, cents, text, reference });
}

interface BalanceAfter {
  readonly date: string;
  readonly cents: number;
  /** What the account held after the line. */
  readonly minor: number;
}

/** The balances before the first line and after the last; files run either way in time. */
function endsOf(balances: readonly BalanceAfter[]) {
  const first = balances[0];
  const last = balances.at(-1);
  if (first === undefined || last === undefined) return { opening: undefined, closing: undefined };
  const second = balances[1];
  const runsBack =
    first.date > last.date ||
    (first.date === last.date &&
      second !== undefined &&
      second.minor === first.minor - first.cents);
  const [oldest, newest] = runsBack ? [last, first] : [first, last];
  return { opening: oldest.minor - oldest.cents, closing: newest.minor };
}
