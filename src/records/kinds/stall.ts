import Type from 'typebox';
import { common, LocalTime, ShiftTime, ShortId } from '../fields.ts';

/** A dated public selling place at a host shop, with who worked when. */
export const Stall = Type.Object({
  ...common,
  kind: Type.Literal('stall'),
  stall: ShortId,
  host: ShortId,
  starts: LocalTime,
  ends: LocalTime,
  shifts: Type.Array(Type.Object({ seller: ShortId, from: ShiftTime, to: ShiftTime })),
});
export type Stall = Type.Static<typeof Stall>;
