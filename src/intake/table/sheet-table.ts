import { strFromU8, unzipSync } from 'fflate';
import { readSheet } from 'read-excel-file/universal';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { FileRefusal } from './file-refusal.ts';
import { type TextTable, tableOf } from './text-table.ts';

/**
 * The first sheet of a workbook (XLSX) as a table of text. Cells that hold formulas are refused:
 * what they show was worked out by another program, perhaps from another file.
 */
export async function sheetTable(bytes: Uint8Array): Promise<Outcome<TextTable, FileRefusal>> {
  const looked = lookInside(bytes);
  if (!looked.ok) return looked;
  let rows: (unknown | null)[][];
  try {
    rows = await readSheet(new Uint8Array(bytes).buffer, { parseNumber: plainNumber });
  } catch {
    return refused({ ...PLACE, said: 'a workbook that cannot be read', wanted: WORKBOOK });
  }
  const table = tableOf(rows.map((row) => row.map(cellText)));
  if (table === undefined) {
    return refused({ ...PLACE, said: 'no line with column names', wanted: WORKBOOK });
  }
  return done(table);
}

const PLACE = { line: 0, field: '' };
const WORKBOOK = 'an XLSX workbook with a table on its first sheet';
/** Unpacked bytes; a file that claims more is not unpacked. */
const UNPACKED_MOST = 60_000_000;

/** Whether the file may be unpacked, and its first sheet holds values alone. */
function lookInside(bytes: Uint8Array): Outcome<undefined, FileRefusal> {
  let unpacked = 0;
  let sheet: Uint8Array | undefined;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        unpacked += originalSize;
        return /^xl\/worksheets\/sheet1\.xml$/.test(name) && originalSize < UNPACKED_MOST;
      },
    });
    sheet = files['xl/worksheets/sheet1.xml'];
  } catch {
    return refused({ ...PLACE, said: 'a file that is cut off or damaged', wanted: WORKBOOK });
  }
  if (unpacked > UNPACKED_MOST) {
    return refused({ ...PLACE, said: `${unpacked} bytes unpacked`, wanted: WORKBOOK });
  }
  const formula = /<c\b[^>]*\br="([A-Z]+)(\d+)"[^>]*><f[\s>/]/.exec(
    sheet === undefined ? '' : strFromU8(sheet),
  );
  if (formula === null) return done(undefined);
  const cell = `${formula[1] ?? ''}${formula[2] ?? ''}`;
  const wanted = 'values alone: save the sheet as CSV and choose that';
  return refused({ line: Number(formula[2]), field: cell, said: 'a formula', wanted });
}

/** Cells are binary fractions inside: beyond six decimals there is only their noise. */
function plainNumber(text: string): string {
  return String(Number(Number(text).toFixed(6)));
}

function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  return cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell);
}
