import Type from 'typebox';
import { common, Reason, RecordId } from '../fields.ts';

/** Removes an earlier record, with the reason; nothing is deleted. */
export const Void = Type.Object({
  ...common,
  kind: Type.Literal('void'),
  voids: RecordId,
  reason: Reason,
});
export type Void = Type.Static<typeof Void>;
