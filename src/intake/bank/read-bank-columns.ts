import Type from 'typebox';
import type { Outcome } from '../../base/outcome.ts';
import type { Finding } from '../finding.ts';
import { readProblem } from '../problems/read-problem.ts';
import { Column, DayOrders, DecimalMarks } from '../table/column-schemas.ts';
import type { BankColumns } from './csv-columns.ts';

const Columns = Type.Object({
  date: Column,
  amount: Type.Optional(Column),
  paidIn: Type.Optional(Column),
  paidOut: Type.Optional(Column),
  direction: Type.Optional(Column),
  text: Type.Optional(Type.Array(Column, { wanted: 'a list of column names' })),
  reference: Type.Optional(Column),
  balance: Type.Optional(Column),
  days: DayOrders,
  decimals: DecimalMarks,
});

/** Reads how a bank's CSV columns are to be taken, as saved earlier. */
export function readBankColumns(text: string): Outcome<BankColumns, Finding> {
  return readProblem(Columns, text);
}
