import Type from 'typebox';
import { common, ShortId, Text } from '../fields.ts';

/** A household; `name` is the adult who answers for the account. */
export const Family = Type.Object({
  ...common,
  kind: Type.Literal('family'),
  family: ShortId,
  name: Text,
  language: Type.Optional(
    Type.String({
      pattern: '^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$',
      maxLength: 35,
      wanted: 'a language tag (BCP 47) like es or zh-Hans',
    }),
  ),
  contact: Type.Optional(Text),
});
export type Family = Type.Static<typeof Family>;
