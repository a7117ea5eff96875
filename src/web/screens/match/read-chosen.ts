import { type BankColumns, guessColumns } from '../../../intake/bank/csv-columns.ts';
import { readBankFile } from '../../../intake/bank/read-bank-file.ts';
import { knownNames, type NamedThings } from '../../../intake/supplier/known-names.ts';
import { readSupplierTable } from '../../../intake/supplier/read-supplier-table.ts';
import {
  guessSupplierColumns,
  type SupplierColumns,
} from '../../../intake/supplier/supplier-columns.ts';
import { csvTable } from '../../../intake/table/csv-table.ts';
import { dayOrders } from '../../../intake/table/day-cell.ts';
import { fileText } from '../../../intake/table/file-text.ts';
import type { TextTable } from '../../../intake/table/text-table.ts';
import type { ColumnsTyped } from './columns-form.tsx';
import type { ChosenFile } from './file-zone.tsx';
import { saveColumns, savedColumns } from './saved-columns.ts';

/** Reads a bank's file, by columns that were said now or before, else by a guess. */
export function readBankChosen(file: ChosenFile, currency: string, typed?: ColumnsTyped) {
  const text = fileText(file.bytes);
  const table = isTable(text) ? csvTable(text) : undefined;
  const heads = table?.heads ?? [];
  const said = typed ?? savedColumns('bank', heads);
  const columns = said === undefined ? undefined : bankColumns(said);
  const read = readBankFile(text, currency, { columns });
  if (read.ok && typed !== undefined) saveColumns('bank', heads, typed);
  const guess = table === undefined ? undefined : guessColumns(table);
  return {
    file: read.ok ? read.value : undefined,
    refusal: read.ok ? undefined : read.refusal,
    heads,
    start: said ?? typedOf(guess),
  };
}

/** Reads a supplier's file, likewise; a workbook's first sheet counts as a table. */
export async function readSupplierChosen(
  file: ChosenFile,
  currency: string,
  setup: NamedThings,
  typed?: ColumnsTyped,
) {
  const tabled = await tableIn(file.bytes);
  if (!tabled.ok) return { file: undefined, refusal: tabled.refusal, heads: [], start: {} };
  const table = tabled.value;
  const said = typed ?? savedColumns('supplier', table.heads);
  const columns = said === undefined ? undefined : supplierColumns(said);
  const names = knownNames(setup);
  const read = readSupplierTable(table, currency, names, { columns });
  if (read.ok && typed !== undefined) saveColumns('supplier', table.heads, typed);
  return {
    file: read.ok ? read.value : undefined,
    refusal: read.ok ? undefined : read.refusal,
    heads: table.heads,
    start: said ?? typedOf(guessSupplierColumns(table, names)),
  };
}

async function tableIn(bytes: Uint8Array) {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const { sheetTable } = await import('../../../intake/table/sheet-table.ts');
    return sheetTable(bytes);
  }
  const table: TextTable | undefined = csvTable(fileText(bytes));
  if (table !== undefined) return { ok: true as const, value: table };
  const wanted = 'a CSV or XLSX file';
  const refusal = { line: 1, field: '', said: 'no line with column names', wanted };
  return { ok: false as const, refusal };
}

function isTable(text: string): boolean {
  return !/^\s*(?:\uFEFF)?(?:<|OFXHEADER)/i.test(text);
}

/** The columns as said; undefined while the day or how it is written is not. */
function bankColumns(typed: ColumnsTyped): BankColumns | undefined {
  const common = commonColumns(typed);
  if (common === undefined) return undefined;
  return {
    ...common,
    paidIn: chosen(typed.paidIn),
    paidOut: chosen(typed.paidOut),
    direction: chosen(typed.direction),
    text: [chosen(typed.text) ?? []].flat(),
  };
}

function supplierColumns(typed: ColumnsTyped): SupplierColumns | undefined {
  const common = commonColumns(typed);
  if (common === undefined) return undefined;
  return {
    ...common,
    words: [chosen(typed.words) ?? []].flat(),
    neighbour: chosen(typed.neighbour),
    product: chosen(typed.product),
    units: chosen(typed.units),
    cases: chosen(typed.cases),
    charge: chosen(typed.charge),
    credit: chosen(typed.credit),
  };
}

function commonColumns(typed: ColumnsTyped) {
  const date = chosen(typed.date);
  const days = dayOrders.find((order) => order === typed.days);
  if (date === undefined || days === undefined) return undefined;
  return {
    date,
    days,
    amount: chosen(typed.amount),
    reference: chosen(typed.reference),
    balance: chosen(typed.balance),
    decimals: typed.decimals === ',' ? (',' as const) : ('.' as const),
  };
}

function chosen(text: string | undefined): string | undefined {
  return text === '' ? undefined : text;
}

function typedOf(columns: object | undefined): ColumnsTyped {
  const typed: Record<string, string> = {};
  for (const [name, value] of Object.entries(columns ?? {})) {
    const first: unknown = Array.isArray(value) ? value[0] : value;
    if (typeof first === 'string') typed[name] = first;
  }
  return typed;
}
