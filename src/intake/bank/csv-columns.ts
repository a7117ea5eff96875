import type { DecimalMark } from './amount-text.ts';

/** How the columns of a CSV file from a bank are to be read; saved by the user once it is right. */
export interface BankColumns {
  /** Names of the columns as in the first line of the file. */
  readonly date: string;
  /** One signed amount, or two columns for what came in and what went out. */
  readonly amount?: string | undefined;
  readonly paidIn?: string | undefined;
  readonly paidOut?: string | undefined;
  readonly text?: readonly string[] | undefined;
  readonly reference?: string | undefined;
  /** What the account held after the line. */
  readonly balance?: string | undefined;
  readonly days: DayOrder;
  readonly decimals: DecimalMark;
}

export type DayOrder = 'year-month-day' | 'month-day-year' | 'day-month-year';

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
 * no date or no amount is found.
 */
export function guessColumns(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): BankColumns | undefined {
  const taken = new Set<string>();
  const find = (words: readonly string[]) => {
    const head = headFor(heads, words, taken);
    if (head !== undefined) taken.add(head);
    return head;
  };
  const date = find(WORDS.date);
  const balance = find(WORDS.balance);
  const amount = find(WORDS.amount);
  const paidIn = amount === undefined ? find(WORDS.paidIn) : undefined;
  const paidOut = amount === undefined ? find(WORDS.paidOut) : undefined;
  if (date === undefined || (amount ?? paidIn ?? paidOut) === undefined) return undefined;
  const reference = find(WORDS.reference);
  const text = heads.filter((head) => !taken.has(head) && matches(head, WORDS.text));
  const cells = (head: string | undefined) =>
    head === undefined ? [] : rows.map((row) => row[heads.indexOf(head)] ?? '');
  const amounts = [amount, paidIn, paidOut].flatMap(cells);
  return {
    date,
    amount,
    paidIn,
    paidOut,
    text,
    reference,
    balance,
    days: dayOrder(cells(date)),
    decimals: decimalMark(amounts),
  };
}

function headFor(heads: readonly string[], words: readonly string[], taken: ReadonlySet<string>) {
  const free = heads.filter((head) => !taken.has(head));
  for (const word of words) {
    const exact = free.find((head) => plain(head) === word);
    if (exact !== undefined) return exact;
  }
  return words
    .filter((word) => word.length > 3)
    .flatMap((word) => free.filter((head) => plain(head).split(' ').includes(word)))[0];
}

function matches(head: string, words: readonly string[]): boolean {
  return words.some((word) => plain(head) === word || plain(head).split(' ').includes(word));
}

function plain(head: string): string {
  return head
    .toLowerCase()
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim();
}

/** Which part of a day stands first, from days that can be only one; else month first for slashes. */
function dayOrder(cells: readonly string[]): DayOrder {
  const parts = cells.map((cell) =>
    cell
      .trim()
      .split(/[^\d]+/)
      .map(Number),
  );
  if (parts.some(([first = 0]) => first > 31)) return 'year-month-day';
  if (parts.some(([first = 0]) => first > 12)) return 'day-month-year';
  if (parts.some(([, second = 0]) => second > 12)) return 'month-day-year';
  return cells.some((cell) => cell.includes('.')) ? 'day-month-year' : 'month-day-year';
}

function decimalMark(cells: readonly string[]): DecimalMark {
  return cells.some((cell) => /,\d{2}\D*$/.test(cell.trim())) ? ',' : '.';
}
