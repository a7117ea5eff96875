import { minorDigits } from '../base/currency.ts';
import { sortedEntries } from '../base/order.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { familyBalances } from '../questions/family-balances.ts';
import { recordRows, rowValues } from './record-rows.ts';

/**
 * A book as a workbook's sheets, as data: records (a row for each line), balances, families. The
 * paper room makes the file's bytes of them (paper/workbook-bytes.ts).
 */
export interface Sheet {
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
  /** Width of each column in characters. */
  readonly widths: readonly number[];
}

export type Cell = string | Amount | null;

/** A whole number that a cell shows with `digits` decimals. */
export interface Amount {
  readonly whole: number;
  readonly digits: number;
}

/** A workbook is one piece in memory: beyond this, CSV is the way. */
export const WORKBOOK_ROWS_MAX = 150_000;

export type SheetsRefusal = { readonly name: 'too_many_rows'; readonly most: number };

/** The workbook's sheets as data; refused where a book is larger than a workbook holds. */
export function workbookSheets(ledger: Ledger): Outcome<readonly Sheet[], SheetsRefusal> {
  const digits = minorDigits(ledger.setup.season?.currency ?? '');
  const records = recordsSheet(ledger, digits);
  if (records.rows.length > WORKBOOK_ROWS_MAX) {
    return refused({ name: 'too_many_rows', most: WORKBOOK_ROWS_MAX });
  }
  return done([records, balancesSheet(ledger, digits), familiesSheet(ledger, digits)]);
}

const RECORD_HEADS = [
  'Record',
  'Written',
  'By',
  'Counts',
  'Kind',
  'Day',
  'About',
  'Part',
  'Product',
  'Units',
  'Price',
  'Amount',
  'Way',
  'Reference',
  'Points at',
  'Text',
];
const RECORD_WIDTHS = [38, 26, 12, 8, 14, 12, 18, 10, 14, 8, 10, 12, 10, 12, 38, 40];

function recordsSheet(ledger: Ledger, digits: number): Sheet {
  const rows: Cell[][] = [RECORD_HEADS];
  for (const row of recordRows(ledger)) {
    rows.push(
      rowValues(row).map((value) =>
        typeof value === 'string' ? value : amount(value.whole, value.of === 'money' ? digits : 0),
      ),
    );
    if (rows.length > WORKBOOK_ROWS_MAX) break;
  }
  return { name: 'Records', rows, widths: RECORD_WIDTHS };
}

function balancesSheet(ledger: Ledger, digits: number): Sheet {
  const { stock, money, credit } = ledger.balances.toAccounts();
  const rows: Cell[][] = [['Ledger', 'Account', 'Product', 'Units', 'Amount']];
  for (const [account, minor] of sortedEntries(money)) {
    rows.push(['money', account, null, null, { whole: minor, digits }]);
  }
  for (const [ledgerName, table] of [['stock', stock] as const, ['credit', credit] as const]) {
    for (const [product, accounts] of sortedEntries(table)) {
      for (const [account, units] of sortedEntries(accounts)) {
        rows.push([ledgerName, account, product, { whole: units, digits: 0 }, null]);
      }
    }
  }
  return { name: 'Balances', rows, widths: [10, 28, 18, 10, 14] };
}

function familiesSheet(ledger: Ledger, digits: number): Sheet {
  const rows: Cell[][] = [['Family', 'Name', 'Sellers', 'Units out', 'Still to pay', 'In credit']];
  for (const family of familyBalances(ledger).families) {
    rows.push([
      family.family,
      family.name,
      family.sellers.map((seller) => seller.name).join(', '),
      { whole: family.unitsOut, digits: 0 },
      { whole: Math.max(0, family.owes), digits },
      { whole: Math.max(0, -family.owes), digits },
    ]);
  }
  return { name: 'Families', rows, widths: [16, 28, 30, 10, 14, 14] };
}

function amount(whole: number | undefined, digits: number): Cell {
  return whole === undefined ? null : { whole, digits };
}
