import Type from 'typebox';
import { common, Day, ShortId, Text } from '../fields.ts';

/**
 * What a seller picked at a prize step: one of its choices, or the prize itself where there is
 * nothing to choose.
 */
export const Choice = Type.Object({
  ...common,
  kind: Type.Literal('choice'),
  seller: ShortId,
  level: ShortId,
  choice: Text,
  /** The day the prize was handed out, weeks after the season. */
  handed: Type.Optional(Day),
});
export type Choice = Type.Static<typeof Choice>;
