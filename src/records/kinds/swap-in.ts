import Type from 'typebox';
import { Lines, movement, ShortId, Text } from '../fields.ts';

/** Goods taken from a neighbour group, with what is owed to the supplier for them. */
export const SwapIn = Type.Object({
  ...movement,
  kind: Type.Literal('swap-in'),
  neighbour: ShortId,
  lines: Lines,
  slip: Type.Optional(Text),
});
export type SwapIn = Type.Static<typeof SwapIn>;
