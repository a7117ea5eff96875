import Papa from 'papaparse';
import { type TextTable, tableOf } from './text-table.ts';

/** A CSV file (RFC 4180, also with semicolons or tabs) as a table; undefined without any heads. */
export function csvTable(text: string): TextTable | undefined {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  return tableOf(data);
}
