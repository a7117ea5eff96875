import { about, type BookCheck, lineAt } from './checked-book.ts';

/** There is a season, and what happened lies in its days. */
export const seasonsFit: BookCheck = (book, findings) => {
  const { season } = book.ledger.setup;
  if (season === undefined) {
    const wanted = 'a season record with its name, currency and days';
    findings.add({ line: 1, field: 'season', said: undefined, wanted, severity: 'warning' });
    return;
  }
  const { closed } = season;
  for (let index = 0; index < book.records.length; index += 1) {
    const record = book.records[index];
    if (record === undefined || !('date' in record) || !book.ledger.standing.counts(record))
      continue;
    const isWithin = record.date >= season.starts && record.date <= season.ends;
    if (isWithin || (closed !== undefined && record.late !== undefined)) continue;
    findings.add({
      line: lineAt(book, index),
      record: record.id,
      field: 'date',
      said: record.date,
      wanted: `a day of the season, ${season.starts} to ${season.ends}`,
      severity: 'warning',
    });
  }
};

/** Where two edits or removals claim one record, a person has to settle which is right. */
export const conflictsAreSettled: BookCheck = (book, findings) => {
  for (const { on, counts, kept } of book.ledger.standing.conflicts()) {
    for (const record of kept) {
      const field = record.kind === 'void' ? 'voids' : 'replaces';
      const wanted = `one claim on a record: ${counts.id} counts, so remove one of the two`;
      findings.add(about(book, record, 'warning', field, on, wanted));
    }
  }
};
