import type { Ledger } from '../ledger/ledger.ts';
import { setupKey } from '../ledger/setup.ts';
import { type BookRecord, isMovement, type RecordOf } from '../records/record.ts';
import type { Circumstances } from './circumstances.ts';
import { type Refusal, refusal } from './refusals.ts';

const OPEN = 'The closing list still has open items';

/**
 * A closed season is read only, but for dated late entries that say why they are late, and for the
 * ticks of prizes that are handed out weeks later.
 */
export function lateRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  const closed = ledger.setup.season?.closed;
  if (closed === undefined || isTick(ledger, record)) return undefined;
  if (!isMovement(record) || record.replaces !== undefined) {
    const message = `${wasClosed(closed)}; only late entries can be added, on their own.`;
    return refusal(record, 'season_is_closed', 'kind', message);
  }
  if (record.late === undefined) {
    const message = `${wasClosed(closed)}; say under "late" why this comes now.`;
    return refusal(record, 'late_entry_needs_a_reason', 'late', message);
  }
  if (record.date < closed.date) {
    const message = `${wasClosed(closed)}; date a late entry on that day or after it.`;
    return refusal(record, 'late_entry_is_dated_before_the_closing', 'date', message);
  }
  return undefined;
}

/** True where a record only says that a prize was handed out, or takes that back. */
function isTick(ledger: Ledger, record: BookRecord): boolean {
  if (record.kind !== 'choice') return false;
  const known = ledger.setup.choices.get(setupKey(record));
  const isTicking = record.handed !== undefined || known?.handed !== undefined;
  return isTicking && (known === undefined || known.choice === record.choice);
}

/**
 * The season is closed by a record that replaces it and carries `closed`: when nothing is open any
 * more, or with a reason and a second person's name for what is written off.
 */
export function closingRefusal(
  ledger: Ledger,
  record: BookRecord,
  circumstances: Circumstances,
): Refusal | undefined {
  if (record.kind !== 'season' || record.closed === undefined) return undefined;
  const current = ledger.setup.season;
  if (current === undefined || record.replaces !== current.id) {
    const message =
      'Close the season by an edit of its record as it stands; open it and close again.';
    return refusal(record, 'closing_does_not_replace_the_season', 'replaces', message);
  }
  return circumstances.isReadyToClose() ? undefined : unreadyRefusal(record, record.closed);
}

function unreadyRefusal(
  record: RecordOf<'season'>,
  closed: { readonly second?: string; readonly reason?: string },
): Refusal | undefined {
  if (closed.second === undefined && closed.reason === undefined) {
    const message = `${OPEN}; settle them, or give a reason and the name of a second person.`;
    return refusal(record, 'season_is_not_ready', 'closed', message);
  }
  if (closed.reason === undefined) {
    const message = `${OPEN}; say why the season is closed with them.`;
    return refusal(record, 'closing_needs_a_reason', 'closed.reason', message);
  }
  if (closed.second === undefined || isSame(closed.second, record.by)) {
    const message = `${OPEN}; a second person, other than the one who closes, has to agree.`;
    return refusal(record, 'closing_needs_a_second_person', 'closed.second', message);
  }
  return undefined;
}

function wasClosed(closed: { readonly date: string }): string {
  return `The season was closed on ${closed.date}`;
}

function isSame(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
