import Type from 'typebox';
import type { Outcome } from '../../base/outcome.ts';
import type { Finding } from '../finding.ts';
import { readProblem } from '../problems/read-problem.ts';
import type { BankColumns } from './csv-columns.ts';

const Column = Type.String({ minLength: 1, wanted: 'the name of a column' });

const Columns = Type.Object({
  date: Column,
  amount: Type.Optional(Column),
  paidIn: Type.Optional(Column),
  paidOut: Type.Optional(Column),
  text: Type.Optional(Type.Array(Column, { wanted: 'a list of column names' })),
  reference: Type.Optional(Column),
  balance: Type.Optional(Column),
  days: Type.Union(
    [
      Type.Literal('year-month-day'),
      Type.Literal('month-day-year'),
      Type.Literal('day-month-year'),
    ],
    { wanted: 'year-month-day, month-day-year or day-month-year' },
  ),
  decimals: Type.Union([Type.Literal('.'), Type.Literal(',')], { wanted: '"." or ","' }),
});

/** Reads how a bank's CSV columns are to be taken, as saved earlier. */
export function readBankColumns(text: string): Outcome<BankColumns, Finding> {
  return readProblem(Columns, text);
}
