import Type from 'typebox';
import { common, ShortId, Text, UnitsOrNone } from '../fields.ts';

/** A child who sells: first name and initial; `goal` in units. */
export const Seller = Type.Object({
  ...common,
  kind: Type.Literal('seller'),
  seller: ShortId,
  name: Text,
  family: ShortId,
  goal: Type.Optional(UnitsOrNone),
  active: Type.Boolean({ wanted: 'true or false' }),
});
export type Seller = Type.Static<typeof Seller>;
