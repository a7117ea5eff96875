import Type from 'typebox';
import { common, Minor, UnitsOrNone } from '../fields.ts';

/** How much of each credited unit the group keeps (minor units), by steps. */
export const Proceeds = Type.Object({
  ...common,
  kind: Type.Literal('proceeds'),
  steps: Type.Array(Type.Object({ from: UnitsOrNone, cents: Minor })),
  basis: Type.Union([Type.Literal('average'), Type.Literal('total')], {
    wanted: 'average or total',
  }),
  waiver: Type.Optional(Type.Object({ cents: Minor })),
});
export type Proceeds = Type.Static<typeof Proceeds>;
