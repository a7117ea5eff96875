import Type from 'typebox';
import { Minor, movement, ShortId, Tender } from '../fields.ts';

/** The group pays a family back (minor units). */
export const Refund = Type.Object({
  ...movement,
  kind: Type.Literal('refund'),
  seller: ShortId,
  cents: Minor,
  tender: Tender,
});
export type Refund = Type.Static<typeof Refund>;
