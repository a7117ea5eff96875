import writeExcelFile from 'write-excel-file/universal';
import { decimalText } from '../statements/decimal-text.ts';
import type { Cell, Sheet } from '../statements/export-xlsx.ts';

/**
 * Sheets as a workbook file's bytes (Office Open XML, ECMA-376). Text cells are text, so nothing
 * that people typed can become a formula. Stands in this room because the library stamps the parts
 * of the file with the clock's time.
 */
export async function workbookBytes(sheets: readonly Sheet[]): Promise<Uint8Array> {
  const written = sheets.map((sheet) => ({
    sheet: sheet.name,
    stickyRowsCount: 1,
    columns: sheet.widths.map((width) => ({ width })),
    data: sheet.rows.map((row, index) => row.map((cell) => writtenCell(cell, index === 0))),
  }));
  const blob = await writeExcelFile(written).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

function writtenCell(cell: Cell, isHead: boolean) {
  if (cell === null) return null;
  if (typeof cell === 'string') {
    return isHead
      ? { value: cell, type: String, fontWeight: 'bold' as const }
      : { value: cell, type: String };
  }
  const text = decimalText(cell.whole, cell.digits);
  const format = cell.digits === 0 ? '0' : `0.${'0'.repeat(cell.digits)}`;
  // A sheet's numbers are binary fractions: from 16 digits on only text keeps every digit.
  return String(Math.abs(cell.whole)).length > 15
    ? { value: text, type: String }
    : { value: Number(text), type: Number, format };
}
