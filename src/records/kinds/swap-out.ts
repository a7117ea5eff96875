import Type from 'typebox';
import { Lines, movement, ShortId, Text } from '../fields.ts';

/** Goods given to a neighbour group, with what is owed to the supplier for them. */
export const SwapOut = Type.Object({
  ...movement,
  kind: Type.Literal('swap-out'),
  neighbour: ShortId,
  lines: Lines,
  slip: Type.Optional(Text),
});
export type SwapOut = Type.Static<typeof SwapOut>;
