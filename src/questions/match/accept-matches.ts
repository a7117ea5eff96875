import type { Ledger } from '../../ledger/ledger.ts';
import type { RecordOf } from '../../records/record.ts';
import { type BankKind, isBankRecord } from './bank-entries.ts';
import type { Match } from './bank-matching.ts';
import type { LineToMatch } from './bank-window.ts';
import type { Drafted } from './missing-bank-records.ts';

/** An edit of a record that says which line of the bank was taken for it. */
export type ClearedEdit = {
  readonly [K in BankKind]: Drafted<K> & { readonly replaces: string };
}[BankKind];

const REFERENCE_MOST = 200;

/**
 * The edits that keep accepted matches in the book. A record that has its line already gets none,
 * so accepting the same file twice changes nothing; of several lines the last day counts.
 */
export function acceptMatches(
  ledger: Ledger,
  matches: readonly Match[],
  lines: readonly LineToMatch[],
): ClearedEdit[] {
  const byNumber = new Map(lines.map((line) => [line.line, line]));
  const byRecord = new Map<string, LineToMatch>();
  for (const { line, records } of matches) {
    const shown = byNumber.get(line);
    if (shown === undefined) continue;
    for (const id of records) {
      const before = byRecord.get(id);
      if (before === undefined || before.date <= shown.date) byRecord.set(id, shown);
    }
  }
  return [...byRecord].flatMap(([id, { date, reference }]) => {
    const record = ledger.standing.currentOf(id);
    if (record === undefined || record.kind === 'void') return [];
    if (!('date' in record) || !isBankRecord(record) || record.cleared !== undefined) return [];
    const named = reference?.slice(0, REFERENCE_MOST);
    return [clearedEdit(record, named === undefined ? { date } : { date, reference: named })];
  });
}

function clearedEdit(
  record: RecordOf<BankKind>,
  cleared: { readonly date: string; readonly reference?: string },
): ClearedEdit {
  const { id, at: _at, by: _by, replaces: _replaces, ...said } = record;
  return { ...said, replaces: id, cleared };
}
