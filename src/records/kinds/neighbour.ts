import Type from 'typebox';
import { common, ShortId, Text } from '../fields.ts';

/** Another local group that goods are swapped with. */
export const Neighbour = Type.Object({
  ...common,
  kind: Type.Literal('neighbour'),
  neighbour: ShortId,
  name: Text,
});
export type Neighbour = Type.Static<typeof Neighbour>;
