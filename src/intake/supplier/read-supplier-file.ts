import { type Outcome, refused } from '../../base/outcome.ts';
import { csvTable } from '../table/csv-table.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { fileText } from '../table/file-text.ts';
import { sheetTable } from '../table/sheet-table.ts';
import { knownNames, type NamedThings } from './known-names.ts';
import { readSupplierTable, type SupplierTableSaid } from './read-supplier-table.ts';
import type { SupplierColumns } from './supplier-columns.ts';
import type { SupplierFile } from './supplier-file.ts';

/**
 * A supplier's statement as CSV or XLSX (its first sheet). Never throws.
 *
 * @param currency ISO 4217 code of the season
 * @param setup the products and neighbours that the statement may name
 */
export async function readSupplierFile(
  bytes: Uint8Array,
  currency: string,
  setup: NamedThings,
  said: SupplierTableSaid = {},
): Promise<Outcome<SupplierFile & { readonly columns: SupplierColumns }, FileRefusal>> {
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  if (isZip) {
    const sheet = await sheetTable(bytes);
    return sheet.ok ? readSupplierTable(sheet.value, currency, knownNames(setup), said) : sheet;
  }
  const text = fileText(bytes);
  const table = text.includes('\0') ? undefined : csvTable(text);
  if (table === undefined) {
    const wanted = 'a CSV or XLSX file';
    return refused({ line: 1, field: '', said: 'no line with column names', wanted });
  }
  return readSupplierTable(table, currency, knownNames(setup), said);
}
