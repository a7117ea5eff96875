import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { moneyToType, typedMoney, typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FieldOf, RowColumn } from './field-form.ts';
import type { FormContext, Typed } from './form-values.ts';

/** Rows of small fields in a form (shifts, lots, deadlines, steps): typed as `shifts.0.from`. */
type RowsForm = FieldOf<'rows'>;

/** How many rows are typed, the empty ones among them too. */
export function rowCount(field: string, typed: Typed): number {
  let count = 0;
  for (const key of Object.keys(typed)) {
    if (!key.startsWith(`${field}.`)) continue;
    count = Math.max(count, Number(key.slice(field.length + 1).split('.')[0]) + 1);
  }
  return count;
}

/** The rows as a record has them; rows with nothing typed are left out. */
export function readRows(
  form: RowsForm,
  typed: Typed,
  currency: FormContext['currency'],
  errors: FieldError[],
): unknown {
  const rows: Record<string, unknown>[] = [];
  for (let at = 0; at < rowCount(form.field, typed); at += 1) {
    const said = (column: RowColumn) => (typed[`${form.field}.${at}.${column.field}`] ?? '').trim();
    if (form.columns.every((column) => said(column) === '')) continue;
    const row: Record<string, unknown> = {};
    for (const column of form.columns) {
      const cell = readCell(column, said(column), currency);
      if (cell.ok && cell.value !== undefined) row[column.field] = cell.value;
      if (!cell.ok) {
        const words = say`${form.label}, row ${at + 1}, ${column.label}: ${cell.refusal}`;
        errors.push({ field: `${form.field}.${at}.${column.field}`, words });
      }
    }
    rows.push(row);
  }
  return rows.length === 0 && form.optional ? undefined : rows;
}

function readCell(
  column: RowColumn,
  said: string,
  currency: string,
): Outcome<string | number | undefined, string> {
  if (said === '') return column.optional ? done(undefined) : refused(say`Fill this in.`);
  if (column.as === 'money') return typedMoney(said, currency);
  if (column.as === 'whole') return typedWhole(said);
  return done(said);
}

/** A record's rows as they would have been typed. */
export function typeRows(form: RowsForm, value: unknown, currency: string): Typed {
  const typed: Record<string, string> = {};
  if (!Array.isArray(value)) return typed;
  for (const [at, row] of value.entries()) {
    const cells = new Map<string, unknown>(Object.entries(row ?? {}));
    for (const column of form.columns) {
      const cell = cells.get(column.field);
      if (cell === undefined) continue;
      const money = column.as === 'money' && typeof cell === 'number';
      typed[`${form.field}.${at}.${column.field}`] = money
        ? moneyToType(cell, currency)
        : String(cell);
    }
  }
  return typed;
}

/** The typed map without one row, the later ones moved up. */
export function withoutRow(field: string, gone: number, typed: Typed): Typed {
  const kept: Record<string, string> = {};
  for (const [key, text] of Object.entries(typed)) {
    if (!key.startsWith(`${field}.`)) {
      kept[key] = text;
      continue;
    }
    const [at = '', ...rest] = key.slice(field.length + 1).split('.');
    const place = Number(at);
    if (place === gone) continue;
    kept[[field, place > gone ? place - 1 : place, ...rest].join('.')] = text;
  }
  return kept;
}
