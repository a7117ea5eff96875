import Type from 'typebox';
import { Lines, movement, ShortId, Text } from '../fields.ts';

/** Units bought to be given away, given on by the supplier or out of the stockroom. */
export const Gift = Type.Object({
  ...movement,
  kind: Type.Literal('gift'),
  seller: Type.Optional(ShortId),
  lines: Lines,
  from: Type.Union([Type.Literal('supplier'), Type.Literal('stockroom')], {
    wanted: 'supplier or stockroom',
  }),
  order: Type.Optional(Text),
});
export type Gift = Type.Static<typeof Gift>;
