import { Ledger } from '../../ledger/ledger.ts';
import type { BookRecord } from '../../records/record.ts';
import { followsFromOthers } from '../follows-from-others.ts';
import { type AmountApart, amountsApart, seenAgainstBook } from './amounts-apart.ts';
import type { Look } from './decide.ts';
import { recordsOfEdits } from './edits.ts';
import { type Explanation, explain } from './explain.ts';
import { observedIn, type Seen, stallsIn } from './seen.ts';

/** An explanation with what taking it would write, and what that would change. */
export interface Cause {
  readonly explanation: Explanation;
  /** Without id, time and writer: whoever takes it stamps them. */
  readonly records: readonly BookRecord[];
  /** Balances at the end of the day, before and after; accounts that only follow are left out. */
  readonly apart: readonly AmountApart[];
}

/** What was seen, explained. Plain data: it may be worked out beside the thread that shows it. */
export interface SeenExplained {
  /** The book against what was seen; empty where all agrees. */
  readonly apart: readonly AmountApart[];
  readonly causes: readonly Cause[];
  readonly unexplained: boolean;
  readonly decides?: Look;
}

/** @param day the day at the end of which it was seen (`YYYY-MM-DD`) */
export function explainSeen(ledger: Ledger, seen: readonly Seen[], day: string): SeenExplained {
  const observed = observedIn(ledger, seen, day);
  const before = ledger.asOf(day);
  const stalls = stallsIn(ledger, seen);
  const { explanations, unexplained, decides } = explain(ledger, observed, { day, stalls });
  const causes = explanations.map((explanation): Cause => {
    const records = recordsOfEdits(explanation.edits, ledger, () => UNWRITTEN);
    const after = written(ledger, explanation).asOf(day);
    const apart = amountsApart(before, after).filter((each) => !followsFromOthers(each));
    return { explanation, records, apart };
  });
  const apart = seenAgainstBook(observed, before);
  return { apart, causes, unexplained, ...(decides === undefined ? {} : { decides }) };
}

const UNWRITTEN = { id: '', at: '', by: '' };

/** A copy of the book with an explanation taken, later than anything in it. */
function written(ledger: Ledger, { edits }: Explanation): Ledger {
  const copy = Ledger.of(ledger.standing.records());
  let count = 0;
  const stamp = () => {
    count += 1;
    const id = `ffffffff-ffff-7fff-bfff-${String(count).padStart(12, '0')}`;
    return { id, at: '9999-12-31T23:59:59.999Z', by: '' };
  };
  for (const record of recordsOfEdits(edits, ledger, stamp)) copy.add(record);
  return copy;
}
