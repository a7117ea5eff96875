import { expect, test } from 'vitest';
import { done } from '../base/outcome.ts';
import { memoryCopies } from '../journal/memory-copy.ts';
import { payments, taken } from '../journal/test-payments.ts';
import type { BookRecord } from '../records/record.ts';
import type { Connection } from './connection.ts';
import { NOT_ON_SERVER, readServer, sendOutbox } from './exchange.ts';

/** A server whose records a test may change behind the phone's back, as a restored backup does. */
const address = { group: 'wrenfield', season: 'spring-2027' };

async function phoneWith(kept: BookRecord[]) {
  const asked: number[] = [];
  const sent: number[] = [];
  const connection: Connection = {
    openSession: async () => done(undefined),
    endSession: async () => done(undefined),
    books: async () => done({ books: [], damage: [] }),
    makeBook: async (book) => done({ book: 'cratebook/1', ...book }),
    recordsAfter: async (_address, after) => {
      asked.push(after);
      const records = kept.map((record, at) => ({ arrival: at + 1, record })).slice(after);
      return done({ records, last: kept.length });
    },
    append: async (_address, records) => {
      sent.push(records.length);
      const known = new Set(kept.map(({ id }) => id));
      kept.push(...records.filter(({ id }) => !known.has(id)));
      return done({ added: [], already: [] });
    },
  };
  const copy = await memoryCopies().openCopy(address);
  const exchange = { copy, connection, address };
  const here = async () => (await copy.journal.readSince(0)).map(({ record }) => record.id);
  return { copy, exchange, asked, sent, here };
}

test('reading on asks for the last known record and what comes after it', async () => {
  const [first, second, third] = payments(3);
  const kept = [first, second].filter((record) => record !== undefined);
  const { exchange, asked, here } = await phoneWith(kept);
  taken(await readServer(exchange));
  if (third !== undefined) kept.push(third);
  taken(await readServer(exchange));
  expect(asked).toEqual([0, 1]);
  expect(await here()).toHaveLength(3);
});

test('what a restored server has lost is held, and goes back when a person says so', async () => {
  const records = payments(5);
  const kept: BookRecord[] = [...records];
  const { copy, exchange, here } = await phoneWith(kept);
  taken(await readServer(exchange));
  const [other] = payments(1, 90);
  // The backup had two records less, and another phone has written one since.
  kept.splice(3, 2, ...(other === undefined ? [] : [other]));
  taken(await readServer(exchange));
  const [entry] = (await copy.state()).outbox;
  expect(entry).toMatchObject({ ids: records.slice(3).map(({ id }) => id) });
  expect(entry?.held?.name).toBe(NOT_ON_SERVER);
  expect(await here()).toHaveLength(6);
  taken(await sendOutbox(exchange));
  expect(kept).toHaveLength(4);
  await copy.hold(entry?.number ?? 0, undefined);
  taken(await sendOutbox(exchange));
  taken(await readServer(exchange));
  expect(kept).toHaveLength(6);
  expect((await copy.state()).outbox).toEqual([]);
});

test('a server that has nothing of the book any more is noticed, and again later', async () => {
  const records = payments(2);
  const kept: BookRecord[] = [...records];
  const { copy, exchange } = await phoneWith(kept);
  taken(await readServer(exchange));
  kept.length = 0;
  taken(await readServer(exchange));
  expect((await copy.state()).outbox.map(({ ids }) => ids.length)).toEqual([2]);
  kept.push(...payments(1, 50));
  taken(await readServer(exchange));
  expect(await copy.journal.readSince(0)).toHaveLength(3);
});

test('days of taps go in a few requests, each tap whole', async () => {
  const { copy, exchange, sent } = await phoneWith([]);
  for (let at = 0; at < 300; at += 1) taken(await copy.keep(payments(2, at * 2)));
  taken(await sendOutbox(exchange));
  expect(sent).toEqual([250, 250, 100]);
  expect((await copy.state()).outbox).toEqual([]);
});
