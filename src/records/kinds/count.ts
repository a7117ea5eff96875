import Type from 'typebox';
import { CountedLines, Counters, movement } from '../fields.ts';

/** The stockroom was counted: moves nothing, states a fact. */
export const Count = Type.Object({
  ...movement,
  kind: Type.Literal('count'),
  lines: CountedLines,
  counters: Type.Optional(Counters),
});
export type Count = Type.Static<typeof Count>;
