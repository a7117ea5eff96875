import Type from 'typebox';

/** Parts of a saved mapping of columns. */
export const Column = Type.String({ minLength: 1, wanted: 'the name of a column' });

export const DayOrders = Type.Union(
  [Type.Literal('year-month-day'), Type.Literal('month-day-year'), Type.Literal('day-month-year')],
  { wanted: 'year-month-day, month-day-year or day-month-year' },
);

export const DecimalMarks = Type.Union([Type.Literal('.'), Type.Literal(',')], {
  wanted: '"." or ","',
});
