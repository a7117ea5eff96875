import Type from 'typebox';
import { CountedLines, Counters, Minor, movement, ShortId, UnitsOrNone } from '../fields.ts';

/** Denomination in minor units (the value of one note or coin) → pieces. */
const Tally = Type.Record(
  Type.String({ pattern: '^[1-9]\\d{0,9}$', wanted: 'the value of one note or coin' }),
  UnitsOrNone,
  { additionalProperties: false, wanted: 'pieces by denomination, like {"500":4,"25":12}' },
);

/** A stall's count and takings; sold = out − back − damaged. Money in minor units. */
export const StallClose = Type.Object({
  ...movement,
  kind: Type.Literal('stall-close'),
  stall: ShortId,
  out: CountedLines,
  back: CountedLines,
  damaged: Type.Optional(CountedLines),
  float: Minor,
  cash: Minor,
  cards: Minor,
  cheques: Minor,
  paidout: Type.Optional(Minor),
  tally: Type.Optional(Tally),
  counters: Type.Optional(Counters),
});
export type StallClose = Type.Static<typeof StallClose>;
