import Type from 'typebox';
import { Minor, movement, ShortId, Tender, Text } from '../fields.ts';

/** A family pays the group (minor units). */
export const Payment = Type.Object({
  ...movement,
  kind: Type.Literal('payment'),
  seller: ShortId,
  tender: Tender,
  cents: Minor,
  receipt: Type.Optional(Text),
});
export type Payment = Type.Static<typeof Payment>;
