import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, byWritten, claimedBy } from '../records/record.ts';
import { type RecordState, stateOf } from './find-records.ts';

/** One record of a chain of edits, and whether it counts. */
export interface HistoryStep {
  readonly record: BookRecord;
  readonly state: RecordState;
}

/** Claims on one record that contradict each other, waiting for a person to choose. */
export interface Contradiction {
  readonly counts: BookRecord;
  readonly kept: readonly BookRecord[];
}

export interface RecordHistory {
  /** The first record, every edit and removal of it, in the order they were written. */
  readonly steps: readonly HistoryStep[];
  /** What counts in the end; undefined where it was removed. */
  readonly current: BookRecord | undefined;
  readonly contradictions: readonly Contradiction[];
}

/** Everything that was ever written about what a record is about. */
export function recordHistory(ledger: Ledger, id: string): RecordHistory {
  const chain = chainOf(ledger, id);
  const steps = [...chain.values()]
    .sort(byWritten)
    .map((record) => ({ record, state: stateOf(ledger, record) }));
  return {
    steps,
    current: steps.find(({ record, state }) => state === 'counts' && record.kind !== 'void')
      ?.record,
    contradictions: ledger.standing
      .conflicts()
      .filter(({ on }) => chain.has(on))
      .map(({ counts, kept }) => ({ counts, kept })),
  };
}

/** All records joined to this one by edits and removals, in either direction. */
function chainOf(ledger: Ledger, id: string): Map<string, BookRecord> {
  const claims = new Map<string, BookRecord[]>();
  for (const record of ledger.standing.records()) {
    const target = claimedBy(record);
    if (target === undefined) continue;
    const onTarget = claims.get(target);
    if (onTarget === undefined) claims.set(target, [record]);
    else onTarget.push(record);
  }
  const chain = new Map<string, BookRecord>();
  const queue = [id];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const record = ledger.standing.get(next);
    if (record === undefined || chain.has(next)) continue;
    chain.set(next, record);
    const target = claimedBy(record);
    if (target !== undefined) queue.push(target);
    for (const claim of claims.get(next) ?? []) queue.push(claim.id);
  }
  return chain;
}
