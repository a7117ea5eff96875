import type { BookRecord, Kind, RecordOf } from '../../src/records/record.ts';
import { allSent } from './all-sent.ts';
import { BOOK, type OpenedApp } from './harness.ts';

const RECORDS = `/api/books/${BOOK.group}/${BOOK.season}/records`;

/** The records that the server has once all is sent, in the order they arrived. */
export async function allRecords(app: OpenedApp): Promise<BookRecord[]> {
  await allSent(app.page);
  const answer = (await app.api('GET', `${RECORDS}?after=0`)) as {
    records: { record: BookRecord }[];
  };
  return answer.records.map(({ record }) => record);
}

/** Those of one kind. */
export async function recordsOf<K extends Kind>(app: OpenedApp, kind: K): Promise<RecordOf<K>[]> {
  const records = await allRecords(app);
  return records.filter((record): record is RecordOf<K> => record.kind === kind);
}

let written = 0;

/** Sets a scene: records as another device would have sent them. */
export async function sendRecords(app: OpenedApp, ...drafts: readonly object[]): Promise<string[]> {
  const records = drafts.map((draft) => {
    written += 1;
    const serial = String(written).padStart(4, '0');
    const id = `0195f3c2-7d1a-7c3e-9a41-1f0c6e2b${serial}`;
    const at = `2027-04-03T19:00:${String(written % 60).padStart(2, '0')}.000Z`;
    return { id, at, by: 'manager', ...draft };
  });
  await app.api('POST', RECORDS, { records });
  return records.map(({ id }) => id);
}
