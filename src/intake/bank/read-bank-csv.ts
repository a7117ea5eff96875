import Papa from 'papaparse';
import { isDay } from '../../base/day.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from './amount-text.ts';
import type { BankFile, BankLine, FileRefusal } from './bank-file.ts';
import { type BankColumns, type DayOrder, guessColumns } from './csv-columns.ts';

/**
 * A bank statement as CSV (RFC 4180, also with semicolons or tabs), read by columns that the user
 * has saved or, without them, by a guess from the heads.
 */
export function readBankCsv(
  text: string,
  currency: string,
  columns?: BankColumns,
): Outcome<BankFile & { readonly columns: BankColumns }, FileRefusal> {
  const table = tableOf(text);
  if (table === undefined) {
    return refused({ line: 1, field: '', said: 'no line with column names', wanted: 'a CSV file' });
  }
  const { heads, rows, firstLine } = table;
  const read = columns ?? guessColumns(heads, rows);
  if (read === undefined) {
    const wanted = 'columns for a date and an amount; say which with --columns';
    return refused({ line: firstLine, field: '', said: heads.join(', '), wanted });
  }
  const missing = namesOf(read).find((name) => !heads.includes(name));
  if (missing !== undefined) {
    return refused({
      line: firstLine,
      field: missing,
      said: heads.join(', '),
      wanted: 'this column',
    });
  }
  const lines: BankLine[] = [];
  const balances: { readonly date: string; readonly minor: number; readonly cents: number }[] = [];
  for (const [at, row] of rows.entries()) {
    const cell = (head: string | undefined) =>
      head === undefined ? '' : (row[heads.indexOf(head)] ?? '').trim();
    const line = bankLine(cell, read, currency, { line: lines.length + 1, at: firstLine + 1 + at });
    if (!line.ok) return line;
    lines.push(line.value);
    const balance = amountMinor(cell(read.balance), currency, read.decimals);
    if (balance !== undefined) {
      balances.push({ date: line.value.date, minor: balance, cents: line.value.cents });
    }
  }
  return done({ lines, ...endsOf(balances), currency, columns: read });
}

interface Table {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Line of the heads, from 1. */
  readonly firstLine: number;
}

/** The heads are the first line with at least two names; what a bank writes above is left out. */
function tableOf(text: string): Table | undefined {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  const first = data.findIndex((row) => row.filter((cell) => /\p{L}/u.test(cell)).length >= 2);
  const heads = data[first];
  if (heads === undefined) return undefined;
  const rows = data.slice(first + 1).filter((row) => row.some((cell) => cell.trim() !== ''));
  return { heads: heads.map((head) => head.trim()), rows, firstLine: first + 1 };
}

function namesOf(columns: BankColumns): string[] {
  const { date, amount, paidIn, paidOut, text = [], reference, balance } = columns;
  return [date, amount, paidIn, paidOut, ...text, reference, balance].flatMap((name) => name ?? []);
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
  const cents = (parts[0] ?? 0) + (parts[1] ?? 0) - Math.abs(paidOut);
  const text = (columns.text ?? [])
    .map(cell)
    .filter((words) => words !== '')
    .join(' ');
  const reference = cell(columns.reference) === '' ? undefined : cell(columns.reference);
  return done({ line: place.line, date, cents, text, reference });
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

function dayOf(text: string, order: DayOrder): string | undefined {
  const parts = text.trim().split(/[^\p{L}\d]+/u);
  const named = parts.findIndex((part) => MONTHS.includes(part.slice(0, 3).toLowerCase()));
  const numbers = parts.map((part, at) =>
    at === named ? MONTHS.indexOf(part.slice(0, 3).toLowerCase()) + 1 : Number(part),
  );
  const [a = Number.NaN, b = Number.NaN, c = Number.NaN] = numbers;
  const isYearFirst = order === 'year-month-day' || a > 31;
  const isMonthFirst = named === 0 || (named === -1 && order === 'month-day-year');
  const [year, month, day] = isYearFirst ? [a, b, c] : isMonthFirst ? [c, a, b] : [c, b, a];
  if (![year, month, day].every(Number.isInteger)) return undefined;
  const full = year < 100 ? 2000 + year : year;
  const pad = (part: number, length: number) => String(part).padStart(length, '0');
  const found = `${pad(full, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
  return isDay(found) ? found : undefined;
}

/** The balances before the first line and after the last; files run either way in time. */
function endsOf(
  balances: readonly { readonly date: string; readonly minor: number; readonly cents: number }[],
) {
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
