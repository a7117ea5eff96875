import Type from 'typebox';
import { common, Day, Minor, ShortId, Text, Units } from '../fields.ts';

/** A product: `price` in minor units a unit, `case` in units, both from the day `from`. */
export const Product = Type.Object({
  ...common,
  kind: Type.Literal('product'),
  product: ShortId,
  name: Text,
  price: Minor,
  case: Units,
  from: Type.Optional(Day),
  returnable: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
  storage: Type.Optional(Text),
  retired: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
});
export type Product = Type.Static<typeof Product>;
