import Type from 'typebox';
import { common, Reason, ShortId, Text } from '../fields.ts';

/** A recall or stop-sale of a product or one lot, everywhere. */
export const Hold = Type.Object({
  ...common,
  kind: Type.Literal('hold'),
  product: ShortId,
  lot: Type.Optional(Text),
  reason: Reason,
  lifted: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
});
export type Hold = Type.Static<typeof Hold>;
