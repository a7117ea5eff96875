import Type from 'typebox';
import { banked } from '../cleared.ts';
import { Minor, movement } from '../fields.ts';

/** The supplier takes what it is owed from the bank account (minor units). */
export const Debit = Type.Object({
  ...movement,
  ...banked,
  kind: Type.Literal('debit'),
  cents: Minor,
  announced: Type.Optional(Minor),
});
export type Debit = Type.Static<typeof Debit>;
