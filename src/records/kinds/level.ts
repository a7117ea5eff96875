import Type from 'typebox';
import { common, ShortId, Text, UnitsOrNone } from '../fields.ts';

/** A prize step: `units` of credit earn it; `each` false takes the place of lower steps. */
export const Level = Type.Object({
  ...common,
  kind: Type.Literal('level'),
  level: ShortId,
  units: UnitsOrNone,
  prize: Text,
  choices: Type.Optional(Type.Array(Text)),
  each: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
});
export type Level = Type.Static<typeof Level>;
