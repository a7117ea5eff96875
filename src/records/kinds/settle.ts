import Type from 'typebox';
import { Minor, movement } from '../fields.ts';

/** The supplier credits the group's proceeds (minor units). */
export const Settle = Type.Object({
  ...movement,
  kind: Type.Literal('settle'),
  proceeds: Minor,
});
export type Settle = Type.Static<typeof Settle>;
