import Type from 'typebox';
import { Day, Lines, movement, Text } from '../fields.ts';

/** The group orders from the supplier: moves nothing, is compared with what is delivered. */
export const SupplyOrder = Type.Object({
  ...movement,
  kind: Type.Literal('supply-order'),
  lines: Lines,
  slip: Type.Optional(Text),
  expected: Type.Optional(Day),
});
export type SupplyOrder = Type.Static<typeof SupplyOrder>;
