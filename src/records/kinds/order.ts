import Type from 'typebox';
import { Lines, Minor, movement, ShortId } from '../fields.ts';

/** A family hands in the orders it gathered: moves nothing, is compared with what it takes over. */
export const Order = Type.Object({
  ...movement,
  kind: Type.Literal('order'),
  seller: ShortId,
  lines: Lines,
  gifts: Type.Optional(Lines),
  paid: Type.Optional(Minor),
});
export type Order = Type.Static<typeof Order>;
