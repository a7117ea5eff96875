import Type from 'typebox';
import { Lines, movement, ShortId } from '../fields.ts';

/** One seller passes goods to another, with what is owed and the credit. */
export const Pass = Type.Object({
  ...movement,
  kind: Type.Literal('pass'),
  from: ShortId,
  to: ShortId,
  lines: Lines,
});
export type Pass = Type.Static<typeof Pass>;
