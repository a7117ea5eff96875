import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement } from '../fields.ts';

/** The bank charges the account (minor units). */
export const BankFee = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('bank-fee'),
  cents: Minor,
});
export type BankFee = Type.Static<typeof BankFee>;
