import Type from 'typebox';
import { Lines, movement } from '../fields.ts';

/** Damaged units swapped one for one by the supplier: moves nothing. */
export const Exchange = Type.Object({
  ...movement,
  kind: Type.Literal('exchange'),
  lines: Lines,
});
export type Exchange = Type.Static<typeof Exchange>;
