import Type from 'typebox';
import { Lines, movement, Reason } from '../fields.ts';

/** Stock on the shelf that the book did not have. */
export const Found = Type.Object({
  ...movement,
  kind: Type.Literal('found'),
  lines: Lines,
  reason: Reason,
});
export type Found = Type.Static<typeof Found>;
