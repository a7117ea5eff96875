import type { BookRecord, RecordOf } from '../../records/record.ts';
import { about, type BookCheck } from './checked-book.ts';

/**
 * Each receipt and each stall's cash is in one deposit only. Told and not refused: two people may
 * have listed the same cash box on two phones, and both deposits are money that the bank has.
 */
export const bankedOnce: BookCheck = (book, findings) => {
  const { standing } = book.ledger;
  const bankedBy = new Map<string, BookRecord>();
  for (const record of book.records.filter(isDeposit)) {
    if (!standing.counts(record)) continue;
    for (const [index, id] of (record.items ?? []).entries()) {
      const item = standing.currentOf(id)?.id ?? id;
      const other = bankedBy.get(item);
      if (other === undefined) bankedBy.set(item, record);
      else {
        const wanted = `a payment or stall-close that no other deposit names (${other.id} does)`;
        findings.add(about(book, record, 'warning', `items.${index}`, id, wanted));
      }
    }
  }
};

function isDeposit(record: BookRecord): record is RecordOf<'deposit'> {
  return record.kind === 'deposit';
}
