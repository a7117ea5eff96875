import type { Ledger } from '../../ledger/ledger.ts';
import { type BookRecord, isMovement, type MovementRecord } from '../../records/record.ts';
import { asRecord } from './as-record.ts';
import { type Hypothesis, outcomeOf } from './hypothesis.ts';

/** One step of putting a book right; the shape that the command line gives out. */
export type Edit =
  /** It should not be there. */
  | { readonly op: 'void'; readonly record: string }
  /** The right values of the fields that change. */
  | { readonly op: 'change'; readonly record: string; readonly fields: Readonly<Fields> }
  /** It is missing; without id, time and writer. */
  | { readonly op: 'add'; readonly record: Readonly<Fields> };

type Fields = Record<string, unknown>;

/** What every written record gets from whoever writes it. */
export interface Written {
  readonly id: string;
  readonly at: string;
  readonly by: string;
}

/** The edits that put a mistake right. */
export function editsOf(hypothesis: Hypothesis): Edit[] {
  const { removal, record, adds } = hypothesis;
  if (removal !== undefined) return [{ op: 'void', record: removal }];
  const { after } = outcomeOf(hypothesis);
  if (after === undefined) return record === undefined ? [] : [{ op: 'void', record: record.id }];
  if (adds !== undefined || record === undefined) return [addOf(after)];
  const isLess = Object.keys(record).some((field) => !(field in after) && !LOOSE.has(field));
  if (isLess) return [{ op: 'void', record: record.id }, addOf(after)];
  return [{ op: 'change', record: record.id, fields: changedFields(record, after) }];
}

/**
 * The records that write edits into a book: a removal, an edit that replaces, or a new record.
 * @param write gives id, time and writer of the next record; times must go up
 */
export function recordsOfEdits(
  edits: readonly Edit[],
  ledger: Ledger,
  write: () => Written,
): BookRecord[] {
  const records: BookRecord[] = [];
  for (const edit of edits) {
    if (edit.op === 'add') records.push(asRecord({ ...write(), ...edit.record }));
    else if (edit.op === 'void') {
      records.push({ ...write(), kind: 'void', voids: edit.record, reason: REASON });
    } else {
      const record = ledger.standing.get(edit.record);
      if (record === undefined || !isMovement(record)) continue;
      const says = { ...record, ...edit.fields, ...write(), replaces: record.id };
      records.push(asRecord(says));
    }
  }
  return records;
}

const REASON = 'Found when a difference was explained';

/** Fields that say nothing about what moved, and may be missing in what takes a record's place. */
const LOOSE: ReadonlySet<string> = new Set([
  'id',
  'at',
  'by',
  'note',
  'replaces',
  'late',
  'slip',
  'receipt',
  'depot',
  'lots',
  'short',
  'tally',
  'counters',
]);
const META: ReadonlySet<string> = new Set(['id', 'at', 'by', 'replaces', 'note', 'late']);

function addOf(record: MovementRecord): Edit {
  const { id, at, by, replaces, ...says } = record;
  return { op: 'add', record: says };
}

function changedFields(record: MovementRecord, after: MovementRecord): Fields {
  const changed: Fields = {};
  for (const [field, value] of Object.entries(after)) {
    if (META.has(field)) continue;
    if (JSON.stringify(Reflect.get(record, field)) !== JSON.stringify(value))
      changed[field] = value;
  }
  return changed;
}
