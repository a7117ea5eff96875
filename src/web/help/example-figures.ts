import { Ledger } from '../../ledger/ledger.ts';
import { type ChangedBalance, changedBalances } from '../../questions/changed-balances.ts';
import { type CountDifference, countDifference } from '../../questions/count-difference.ts';
import { followsFromOthers } from '../../questions/follows-from-others.ts';
import type { BookRecord } from '../../records/record.ts';
import { madeUpRecord, madeUpRecords } from './made-up-records.ts';
import type { Topic } from './topics.ts';

/** An example worked out by the ledger over the made-up book. */
export interface ExampleFigures {
  readonly record: BookRecord;
  /** The made-up book with the example in it. */
  readonly ledger: Ledger;
  /** Balances before and after, without those that follow from others. */
  readonly changed: readonly ChangedBalance[];
  /** Of a count, which moves nothing: what it differs by. */
  readonly counted?: CountDifference;
}

const LATER = 500;

export function exampleFigures({ example }: Topic): ExampleFigures {
  const records = madeUpRecords();
  const record = madeUpRecord(example, records.length + LATER);
  const before = Ledger.of(records);
  const ledger = Ledger.of([...records, record]);
  const changed = changedBalances(before.balances, ledger.balances).filter(
    (change) => !followsFromOthers(change) && change.account !== 'stall-sold',
  );
  if (record.kind !== 'count') return { record, ledger, changed };
  return { record, ledger, changed, counted: countDifference(ledger, record) };
}
