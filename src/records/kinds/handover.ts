import Type from 'typebox';
import { Lines, movement, ShortId, Text } from '../fields.ts';

/** Goods out: a family takes goods over and owes their price. */
export const Handover = Type.Object({
  ...movement,
  kind: Type.Literal('handover'),
  seller: ShortId,
  lines: Lines,
  slip: Type.Optional(Text),
});
export type Handover = Type.Static<typeof Handover>;
