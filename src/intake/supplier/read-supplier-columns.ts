import Type from 'typebox';
import type { Outcome } from '../../base/outcome.ts';
import type { Finding } from '../finding.ts';
import { readProblem } from '../problems/read-problem.ts';
import { Column, DayOrders, DecimalMarks } from '../table/column-schemas.ts';
import type { SupplierColumns } from './supplier-columns.ts';

const Columns = Type.Object({
  date: Column,
  words: Type.Array(Column, { wanted: 'a list of column names' }),
  reference: Type.Optional(Column),
  neighbour: Type.Optional(Column),
  product: Type.Optional(Column),
  units: Type.Optional(Column),
  cases: Type.Optional(Column),
  amount: Type.Optional(Column),
  charge: Type.Optional(Column),
  credit: Type.Optional(Column),
  balance: Type.Optional(Column),
  days: DayOrders,
  decimals: DecimalMarks,
});

/** Reads how the columns of a supplier's statement are to be taken, as saved earlier. */
export function readSupplierColumns(text: string): Outcome<SupplierColumns, Finding> {
  return readProblem(Columns, text);
}
