import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement, RecordId } from '../fields.ts';

/** A cheque came back; with `charge` the family owes the bank's fee too. */
export const Bounced = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('bounced'),
  payment: RecordId,
  fee: Type.Optional(Minor),
  charge: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
});
export type Bounced = Type.Static<typeof Bounced>;
