import type { BookRecord, MovementRecord } from '../../records/record.ts';

/**
 * Records that are put together field by field, by a table of parts or from an edit: the compiler
 * cannot follow that they are records. What is made here is folded and compared before it is given
 * out, and a test holds it to the rules for new records.
 */
export function asMovement(fields: object): MovementRecord {
  return fields as MovementRecord;
}

export function asRecord(fields: object): BookRecord {
  return fields as BookRecord;
}
