import Type from 'typebox';
import { common, LanguageTag, ShortId, Text } from '../fields.ts';

/** A household; `name` is the adult who answers for the account. */
export const Family = Type.Object({
  ...common,
  kind: Type.Literal('family'),
  family: ShortId,
  name: Text,
  language: Type.Optional(LanguageTag),
  contact: Type.Optional(Text),
});
export type Family = Type.Static<typeof Family>;
