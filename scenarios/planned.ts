import { assert } from '../src/base/assert.ts';
import { uuid7 } from '../src/base/id.ts';
import { seeded } from '../src/base/seeded.ts';
import { type BookRecord, isMovement } from '../src/records/record.ts';

/**
 * A season told as days with what happened on them, and the way from there to records. A plan is
 * data that a person can read and change; ids and times follow from it, so the same plan always
 * gives the same book.
 */

/** What a record says; the plan gives its day, the writer its id and time. */
export type PlannedRecord = Planned<BookRecord>;

type Planned<R extends BookRecord> = R extends BookRecord
  ? Omit<R, 'id' | 'at' | 'by' | 'date'> & {
      /** A name for other planned records to point at, as `#name`. */
      readonly ref?: string;
      /** The day it happened on, where that is not the day it was written. */
      readonly date?: string;
      readonly by?: string;
    }
  : never;

export interface PlannedDay {
  readonly day: string;
  readonly records: readonly PlannedRecord[];
}

const FIRST_HOUR_UTC = 16;
const MINUTE_MS = 60_000;

/** Turns a plan into records, a minute apart on each day. */
export function recordsOf(plan: readonly PlannedDay[], seed: number): BookRecord[] {
  const random = seeded(seed);
  const idByRef = new Map<string, string>();
  const records: BookRecord[] = [];
  for (const { day, records: planned } of plan) {
    let ms = Date.parse(`${day}T${FIRST_HOUR_UTC}:00:00Z`);
    for (const { ref, by, date, ...says } of planned) {
      ms += MINUTE_MS;
      const id = uuid7(ms, random.bytes(10));
      if (ref !== undefined) idByRef.set(`#${ref}`, id);
      const written = { id, at: new Date(ms).toISOString(), by: by ?? 'manager' };
      const record = pointed({ ...written, ...says }, idByRef);
      records.push(isMovement(record) ? { ...record, date: date ?? day } : record);
    }
  }
  return records;
}

/**
 * Puts record ids in place of `#name`s. The schema test of the demo holds the result to be records.
 */
function pointed(planned: object, idByRef: ReadonlyMap<string, string>): BookRecord {
  const text = JSON.stringify(planned, (_key, part: unknown) => {
    if (typeof part !== 'string' || !part.startsWith('#')) return part;
    const id = idByRef.get(part);
    assert(id !== undefined, `the plan points at ${part} after it is written`);
    return id;
  });
  return JSON.parse(text) as BookRecord;
}
