import Type from 'typebox';
import { common, ShortId, Text } from '../fields.ts';

/** A shop or place that hosts stalls. */
export const Host = Type.Object({
  ...common,
  kind: Type.Literal('host'),
  host: ShortId,
  name: Text,
});
export type Host = Type.Static<typeof Host>;
