import Type from 'typebox';
import { Day, Lines, movement, ShortId, Text, Units } from '../fields.ts';

const Lot = Type.Object({
  product: ShortId,
  lot: Text,
  bestBefore: Type.Optional(Day),
  units: Type.Optional(Units),
});

/** Goods taken over from the supplier: units counted at hand-over, not those on the slip. */
export const Delivery = Type.Object({
  ...movement,
  kind: Type.Literal('delivery'),
  lines: Lines,
  slip: Type.Optional(Text),
  depot: Type.Optional(Text),
  lots: Type.Optional(Type.Array(Lot)),
  short: Type.Optional(Lines),
});
export type Delivery = Type.Static<typeof Delivery>;
