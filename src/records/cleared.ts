import Type from 'typebox';
import { Day, Text } from './fields.ts';

/**
 * What a movement has that shows on the bank's statement, once a person has taken a line of it for
 * this record: the line's day, and the bank's own name for it.
 */
export const banked = {
  cleared: Type.Optional(Type.Object({ date: Day, reference: Type.Optional(Text) })),
};
