import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement, RecordId, Text } from '../fields.ts';

/** Cash and cheques brought to the bank (minor units). */
export const Deposit = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('deposit'),
  cents: Minor,
  items: Type.Optional(Type.Array(RecordId)),
  slip: Type.Optional(Text),
});
export type Deposit = Type.Static<typeof Deposit>;
