import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement } from '../fields.ts';

/** Card takings arrive at the bank, or count against what the supplier is owed (minor units). */
export const CardSettle = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('card-settle'),
  cents: Minor,
  fee: Type.Optional(Minor),
  to: Type.Union([Type.Literal('bank'), Type.Literal('supplier')], { wanted: 'bank or supplier' }),
});
export type CardSettle = Type.Static<typeof CardSettle>;
