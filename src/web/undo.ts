import type { Ledger } from '../ledger/ledger.ts';
import type { BookRecord, RecordOf } from '../records/record.ts';
import type { Draft } from './book.ts';
import { say } from './say.ts';

/**
 * The record that takes another one back, as nothing is ever deleted: an added record is removed,
 * a removal is itself removed, an edit is edited back. What others point at (a bounced cheque at
 * its payment) is then found again under the id they know: a removed record stands once more, and
 * an id of any version means the version that counts. An edit cannot be removed instead: that would
 * remove what was edited along with it.
 */
export function undoDraft(ledger: Ledger, record: BookRecord): Draft {
  if (record.kind === 'void') return removalOf(broughtBack(ledger, record) ?? record.id);
  const earlier = record.replaces === undefined ? undefined : ledger.standing.get(record.replaces);
  if (earlier !== undefined) return { ...contentOf(earlier), replaces: record.id };
  return removalOf(record.id);
}

/**
 * The record that a removal of a removal put back: undoing that removes the record once more, so
 * that undo after undo makes no chain of removals.
 */
function broughtBack(ledger: Ledger, record: RecordOf<'void'>): string | undefined {
  const removal = ledger.standing.get(record.voids);
  if (removal?.kind !== 'void') return undefined;
  const removed = ledger.standing.get(removal.voids);
  return removed?.kind === 'void' ? undefined : removed?.id;
}

function removalOf(id: string): Draft {
  return { kind: 'void', voids: id, reason: say`Undone` };
}

/** A record's own content, without what the device stamped and without what it replaced. */
export function contentOf(record: BookRecord): Draft {
  const { id: _id, at: _at, by: _by, replaces: _replaces, ...content } = record;
  // Leaving the stamped fields out of a record is exactly what a draft is.
  return content as Draft;
}
