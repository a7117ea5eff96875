import type { FindingList } from '../../intake/finding-list.ts';
import { priceOfLines, soldAtStall } from '../../ledger/posting.ts';
import type { BookRecord, RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { about, type BookCheck, type CheckedBook } from './checked-book.ts';

/** A record's own figures agree with each other: tally and cash, price and paid, out and back. */
export const recordsAgree: BookCheck = (book, findings) => {
  for (const record of book.records) {
    if (!hasFigures(record) || !book.ledger.standing.counts(record)) continue;
    if (record.kind === 'online') paidIsPrice(book, record, findings);
    else {
      tallyIsCash(book, record, findings);
      soldIsNotNegative(book, record, findings);
    }
  }
};

function hasFigures(record: BookRecord): record is RecordOf<'online'> | RecordOf<'stall-close'> {
  return record.kind === 'online' || record.kind === 'stall-close';
}

function paidIsPrice(book: CheckedBook, record: RecordOf<'online'>, findings: FindingList): void {
  const price = [record.lines, record.gifts ?? {}].reduce(
    (sum, lines) => sum + priceOfLines(lines, record.date, book.ledger),
    0,
  );
  if (price === record.paid) return;
  const wanted = `${price}, the price of lines and gifts together`;
  findings.add(about(book, record, 'warning', 'paid', record.paid, wanted));
}

function tallyIsCash(
  book: CheckedBook,
  record: RecordOf<'stall-close'>,
  findings: FindingList,
): void {
  if (record.tally === undefined) return;
  let counted = 0;
  for (const value in record.tally) counted += Number(value) * (record.tally[value] ?? 0);
  if (counted === record.cash) return;
  const wanted = `pieces that add up to the cash, ${record.cash}, not ${counted}`;
  findings.add(about(book, record, 'warning', 'tally', counted, wanted));
}

function soldIsNotNegative(
  book: CheckedBook,
  record: RecordOf<'stall-close'>,
  findings: FindingList,
): void {
  for (const [product, sold] of Object.entries(soldAtStall(record))) {
    if (sold >= 0) continue;
    const [field, units] = Object.hasOwn(record.back, product)
      ? [`back.${product}`, record.back[product]]
      : [`damaged.${product}`, record.damaged?.[product]];
    const most = unitsOf(record.out, product);
    const wanted = `at most what was taken out, ${most}, back and damaged together`;
    findings.add(about(book, record, 'warning', field, units, wanted));
  }
}
