import Type from 'typebox';
import { Lines, movement, ShortId } from '../fields.ts';

/** Goods back: a family brings goods back. */
export const Return = Type.Object({
  ...movement,
  kind: Type.Literal('return'),
  seller: ShortId,
  lines: Lines,
});
export type Return = Type.Static<typeof Return>;
