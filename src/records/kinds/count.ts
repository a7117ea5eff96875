import Type from 'typebox';
import { CountedLines, movement, ShortId, Text } from '../fields.ts';
import { StallEntry } from '../stall-entry.ts';

/** The stockroom was counted: moves nothing, states a fact. */
export const Count = Type.Object({
  ...movement,
  kind: Type.Literal('count'),
  lines: CountedLines,
  /** Who counted: two people where there are two, one where nobody else could. */
  counters: Type.Optional(Type.Array(Text, { wanted: 'a list of names' })),
  /**
   * What a phone wrote down at a stall, handed in. `lines` is then empty: nothing was said about
   * the stockroom.
   */
  sheet: Type.Optional(Type.Object({ stall: ShortId, entries: Type.Array(StallEntry) })),
});
export type Count = Type.Static<typeof Count>;
