import Type from 'typebox';
import { CountedLines, movement, Text } from '../fields.ts';

/** The stockroom was counted: moves nothing, states a fact. */
export const Count = Type.Object({
  ...movement,
  kind: Type.Literal('count'),
  lines: CountedLines,
  /** Who counted: two people where there are two, one where nobody else could. */
  counters: Type.Optional(Type.Array(Text, { wanted: 'a list of names' })),
});
export type Count = Type.Static<typeof Count>;
