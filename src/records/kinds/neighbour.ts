import Type from 'typebox';
import { common, ShortId, Text } from '../fields.ts';

/** Another local group that goods are swapped with, or the supplier's own depot. */
export const Neighbour = Type.Object({
  ...common,
  kind: Type.Literal('neighbour'),
  neighbour: ShortId,
  name: Text,
  /** True for the supplier's depot: a swap out to it is goods brought back to the supplier. */
  supplier: Type.Optional(Type.Boolean()),
});
export type Neighbour = Type.Static<typeof Neighbour>;
