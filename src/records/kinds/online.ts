import Type from 'typebox';
import { Lines, Minor, movement, ShortId, Text } from '../fields.ts';

/**
 * A buyer paid the supplier online; `paid` is the price of `lines` and `gifts` together (minor
 * units).
 */
export const Online = Type.Object({
  ...movement,
  kind: Type.Literal('online'),
  order: Text,
  seller: Type.Optional(ShortId),
  lines: Lines,
  gifts: Type.Optional(Lines),
  paid: Minor,
  sent: Type.Union([Type.Literal('post'), Type.Literal('hand')], { wanted: 'post or hand' }),
});
export type Online = Type.Static<typeof Online>;
