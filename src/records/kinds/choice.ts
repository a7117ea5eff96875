import Type from 'typebox';
import { common, ShortId, Text } from '../fields.ts';

/** What a seller picked at a prize step. */
export const Choice = Type.Object({
  ...common,
  kind: Type.Literal('choice'),
  seller: ShortId,
  level: ShortId,
  choice: Text,
});
export type Choice = Type.Static<typeof Choice>;
