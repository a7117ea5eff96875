import { uuid7 } from '../../src/base/id.ts';
import type { BookCopy } from '../../src/journal/book-copy.ts';
import type { Fault } from './phone.ts';

/** Faults that sync code is known for; the check of histories has to find each. */
export const faults: Readonly<Record<string, Fault>> = {
  'the outbox is cleared when it is sent, before any answer': {
    connection: (connection, copies, book) => ({
      ...connection,
      append: async (address, records) => {
        const copy = await copies.openCopy(book);
        for (const { number } of (await copy.state()).outbox) await copy.sent(number);
        return connection.append(address, records);
      },
    }),
  },
  'ids are made when a record is sent': {
    connection: (connection) => {
      let sent = 0;
      return {
        ...connection,
        append: (address, records) =>
          connection.append(
            address,
            records.map((record) => {
              sent += 1;
              const bytes = new Uint8Array(10).map((_, at) => (sent * 31 + at * 7) % 251);
              return { ...record, id: uuid7(Date.parse(record.at) + sent, bytes) };
            }),
          ),
      };
    },
  },
  'the place moves before the records are kept': {
    copy: (copy) => ({
      ...copy,
      take: async (records, place) => {
        if (place !== undefined) await copy.take([], place);
        // A store that ends between the two has the place without the records.
        return records.length % 2 === 0 ? copy.take(records.slice(1)) : copy.take(records);
      },
    }),
  },
  'the outbox is written apart from the record': {
    copy: (copy): BookCopy => ({ ...copy, keep: (records) => copy.journal.append(records) }),
  },
  'reading on goes by the time of a record': {
    connection: (connection) => ({
      ...connection,
      recordsAfter: async (address, after) => {
        const all = await connection.recordsAfter(address, 0);
        if (!all.ok) return all;
        const before = all.value.records.filter(({ arrival }) => arrival <= after);
        const newest =
          before
            .map(({ record }) => record.at)
            .sort()
            .at(-1) ?? '';
        const later = all.value.records.filter(
          ({ arrival, record }) => arrival > after && (record.at > newest || arrival === after + 1),
        );
        return { ok: true, value: { records: later, last: all.value.last } };
      },
    }),
  },
  'two phones give out one series of receipts': { sameSeries: true },
};
