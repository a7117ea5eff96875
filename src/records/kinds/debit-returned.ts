import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement, RecordId } from '../fields.ts';

/** The bank sends a debit back: the debt stands again, the fee is the group's. */
export const DebitReturned = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('debit-returned'),
  debit: RecordId,
  fee: Type.Optional(Minor),
});
export type DebitReturned = Type.Static<typeof DebitReturned>;
