import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { DayOrder } from './day-cell.ts';
import type { FileRefusal } from './file-refusal.ts';
import { cellReader, type TextTable } from './text-table.ts';

/** Columns as saved or guessed; the order of their days may still be open. */
interface ColumnsToFit {
  readonly date: string;
  readonly days?: DayOrder | undefined;
}

/**
 * Columns that a table really has, with the order of its days settled; what is missing otherwise.
 *
 * @param columns saved or guessed; undefined where nothing could be guessed
 * @param namesOf every head that the columns name
 * @param asked.days the order of days as said beforehand; @param asked.wanted what to look for
 */
export function fittingColumns<C extends ColumnsToFit>(
  table: TextTable,
  columns: C | undefined,
  namesOf: (columns: C) => readonly string[],
  asked: { readonly days: DayOrder | undefined; readonly wanted: string },
): Outcome<C & { readonly days: DayOrder }, FileRefusal> {
  const place = { line: table.headLine, said: table.heads.join(', ') };
  if (columns === undefined) return refused({ ...place, field: '', wanted: asked.wanted });
  const missing = namesOf(columns).find((name) => !table.heads.includes(name));
  if (missing !== undefined) return refused({ ...place, field: missing, wanted: 'this column' });
  const days = asked.days ?? columns.days;
  if (days !== undefined) return done({ ...columns, days });
  const [first] = table.rows;
  const day = first === undefined ? '' : cellReader(table, first)(columns.date);
  const wanted = 'the order of its days: month-day-year or day-month-year';
  return refused({ line: first?.at ?? 0, field: columns.date, said: day, wanted });
}
