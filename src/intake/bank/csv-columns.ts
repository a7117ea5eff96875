import { type DecimalMark, decimalMarkOf } from '../table/amount-text.ts';
import { type DayOrder, dayOrderOf } from '../table/day-cell.ts';
import { HeadFinder } from '../table/head-words.ts';
import { cellsOf, type TextTable } from '../table/text-table.ts';

/** How the columns of a CSV file from a bank are to be read; saved by the user once it is right. */
export interface BankColumns {
  /** Names of the columns as in the first line of the file. */
  readonly date: string;
  /** One signed amount, or two columns for what came in and what went out. */
  readonly amount?: string | undefined;
  readonly paidIn?: string | undefined;
  readonly paidOut?: string | undefined;
  /** A column that says of each amount whether it came in (`CR`) or went out (`DR`). */
  readonly direction?: string | undefined;
  readonly text?: readonly string[] | undefined;
  readonly reference?: string | undefined;
  /** What the account held after the line. */
  readonly balance?: string | undefined;
  readonly days: DayOrder;
  readonly decimals: DecimalMark;
}

/** Words that columns go by, the telling ones first (common practice, in several languages). */
const WORDS = {
  date: [
    'posting date',
    'posted',
    'booking date',
    'transaction date',
    'date',
    'day',
    'fecha',
    'datum',
    'buchungstag',
  ],
  amount: ['amount', 'value', 'importe', 'betrag', 'montant', 'sum'],
  paidIn: ['paid in', 'money in', 'credit', 'deposit', 'deposits', 'in', 'abono', 'haben'],
  paidOut: ['paid out', 'money out', 'debit', 'withdrawal', 'withdrawals', 'out', 'cargo', 'soll'],
  text: [
    'description',
    'memo',
    'payee',
    'name',
    'details',
    'narrative',
    'text',
    'concepto',
    'verwendungszweck',
    'type',
  ],
  reference: ['reference', 'transaction id', 'fitid', 'id', 'ref', 'referencia'],
  balance: ['running balance', 'balance', 'saldo'],
} as const;

/**
 * A guess at the columns from the heads and the cells, for the user to look over; undefined where
 * no date or no amount is found. `days` is missing where the days could be read two ways.
 */
export function guessColumns(
  table: TextTable,
): (Omit<BankColumns, 'days'> & { readonly days: DayOrder | undefined }) | undefined {
  const heads = new HeadFinder(table.heads);
  const date = heads.take(WORDS.date);
  const balance = heads.take(WORDS.balance);
  const amount = heads.take(WORDS.amount);
  const paidIn = amount === undefined ? heads.take(WORDS.paidIn) : undefined;
  const paidOut = amount === undefined ? heads.take(WORDS.paidOut) : undefined;
  if (date === undefined || (amount ?? paidIn ?? paidOut) === undefined) return undefined;
  const direction = directionHead(table, amount);
  const reference = heads.take(WORDS.reference);
  const text = heads.takeAll(WORDS.text);
  const days = dayOrderOf(cellsOf(table, date));
  const amounts = [amount, paidIn, paidOut, balance].flatMap((head) => cellsOf(table, head));
  const decimals = decimalMarkOf(amounts);
  return { date, amount, paidIn, paidOut, direction, text, reference, balance, days, decimals };
}

/** Whether a cell says that the amount beside it went out; undefined where it says neither. */
export function goesOut(cell: string): boolean | undefined {
  const word = cell.toLowerCase().replace(/[^a-z]/g, '');
  if (OUT.has(word)) return true;
  return IN.has(word) ? false : undefined;
}

const OUT = new Set(['d', 'dr', 'debit', 'dbit', 'out', 'withdrawal']);
const IN = new Set(['c', 'cr', 'credit', 'crdt', 'in', 'deposit']);

/** A column of nothing but directions, beside amounts that have no sign. */
function directionHead(table: TextTable, amount: string | undefined): string | undefined {
  if (cellsOf(table, amount).some((cell) => /[-−(]/.test(cell))) return undefined;
  return table.heads.find((head) => {
    const cells = cellsOf(table, head);
    return cells.length > 0 && cells.every((cell) => goesOut(cell) !== undefined);
  });
}
