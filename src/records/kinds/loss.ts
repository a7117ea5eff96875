import Type from 'typebox';
import { Lines, Minor, movement, Reason, ShortId } from '../fields.ts';

/** Stock written off (`lines`), or a debt given up (`seller` and `cents`); never both. */
export const Loss = Type.Object({
  ...movement,
  kind: Type.Literal('loss'),
  lines: Type.Optional(Lines),
  seller: Type.Optional(ShortId),
  cents: Type.Optional(Minor),
  reason: Reason,
});
export type Loss = Type.Static<typeof Loss>;
