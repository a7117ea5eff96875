import { expect, test } from 'vitest';
import { done, refused } from '../base/outcome.ts';
import { seeded } from '../base/seeded.ts';
import { memoryCopies } from '../journal/memory-copy.ts';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { Book, type Draft, isWhole, type Machine } from './book.ts';
import { type Connection, NO_ANSWER } from './connection.ts';

const made = testBook({ honey: 800 }, ['ada']);
const fee = { kind: 'bank-fee', date: '2027-02-03', cents: 350 } as const;

/** A server in memory whose next answer can be lost on the way, before or after it has written. */
function server() {
  const kept: BookRecord[] = [...made.setup];
  const trouble: { next: 'none' | 'lost' | 'refuse' } = { next: 'none' };
  const connection: Connection = {
    openSession: async () => done(undefined),
    endSession: async () => done(undefined),
    books: async () => done({ books: [], damage: [] }),
    makeBook: async (book) => done({ book: 'cratebook/1', ...book }),
    recordsAfter: async (_book, after) =>
      done({
        records: kept.slice(after).map((record, at) => ({ arrival: after + at + 1, record })),
        last: kept.length,
      }),
    append: async (_book, records) => {
      const how = trouble.next;
      trouble.next = 'none';
      if (how === 'refuse') return refused({ name: 'season_is_closed', message: 'Closed.' });
      const fresh = records.filter((record) => !kept.some(({ id }) => id === record.id));
      kept.push(...fresh);
      if (how === 'lost') return refused({ name: NO_ANSWER, message: 'No answer.' });
      const first = kept.length - fresh.length + 1;
      return done({
        added: fresh.map((record, at) => ({ arrival: first + at, id: record.id })),
        already: [],
      });
    },
  };
  return { kept, trouble, connection };
}

function machine(): Machine {
  const random = seeded(5);
  // The clock stands still: ids and times must be apart all the same.
  return {
    now: () => 1_800_000_000_000,
    random: random.bytes,
    today: () => '2027-02-03',
    pause: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
    receiptSeries: 'K7M-',
    copies: memoryCopies(),
    keeps: true,
    windows: { tell: () => undefined, listen: () => () => undefined },
  };
}

async function openBook(connection: Connection): Promise<Book> {
  const opened = await Book.open({ group: 'g', season: 's' }, connection, machine());
  if (!opened.ok) throw new Error(opened.refusal.message);
  // What was read for the first time is being kept meanwhile.
  await opened.value.atRest();
  return opened.value;
}

test('what is added is in the ledger once the server has it', async () => {
  const { kept, connection } = server();
  const book = await openBook(connection);
  const before = book.version.value;
  const answer = await book.append([fee]);
  expect(answer.ok).toBe(true);
  expect(book.ledger.balances.moneyOf('fees')).toBe(350);
  expect(book.version.value).toBeGreaterThan(before);
  expect(kept.at(-1)).toMatchObject({ ...fee, by: 'manager' });
});

test('a book is there before it is kept, and what is added meanwhile is kept with it', async () => {
  const { kept, connection } = server();
  const device = machine();
  const opened = await Book.open({ group: 'g', season: 's' }, connection, device);
  if (!opened.ok) throw new Error(opened.refusal.message);
  const copy = await device.copies.openCopy({ group: 'g', season: 's' });
  expect(opened.value.ledger.size).toBe(made.setup.length);
  expect(await copy.journal.readSince(0)).toEqual([]);
  await opened.value.append([fee]);
  await opened.value.atRest();
  const ids = (await copy.journal.readSince(0)).map(({ record }) => record.id);
  expect(ids.toSorted()).toEqual(kept.map(({ id }) => id).toSorted());
  expect(opened.value.ledger.balances.moneyOf('fees')).toBe(350);
});

test('a copy that was cut off while it was kept is not taken for the book', async () => {
  const { kept, connection } = server();
  const device = machine();
  const copy = await device.copies.openCopy({ group: 'g', season: 's' });
  await copy.take(kept.slice(0, 1));
  const opened = await Book.open({ group: 'g', season: 's' }, connection, device);
  expect(opened.ok && opened.value.ledger.size).toBe(made.setup.length);
  expect(isWhole(await copy.state())).toBe(false);
  if (opened.ok) await opened.value.atRest();
  expect(isWhole(await copy.state())).toBe(true);
});

test('records of one tap follow each other in time', async () => {
  const { kept, connection } = server();
  const book = await openBook(connection);
  await book.append([fee, { ...fee, cents: 1 }]);
  const [first, second] = kept.slice(-2);
  expect((first?.at ?? '') < (second?.at ?? '')).toBe(true);
});

test('the same drafts twice at once are one record', async () => {
  const { kept, connection } = server();
  const book = await openBook(connection);
  await Promise.all([book.append([fee]), book.append([fee])]);
  expect(kept.filter(({ kind }) => kind === 'bank-fee')).toHaveLength(1);
});

test('a lost answer leaves it saved on this phone, and sending again makes no double', async () => {
  const { kept, trouble, connection } = server();
  const book = await openBook(connection);
  trouble.next = 'lost';
  expect((await book.append([fee])).ok).toBe(true);
  expect(book.onPhone.value.waiting).toHaveLength(1);
  expect(book.trouble.value?.name).toBe(NO_ANSWER);
  expect((await book.refresh()).ok).toBe(true);
  expect(book.onPhone.value.waiting).toEqual([]);
  expect(book.trouble.value).toBe(undefined);
  expect(kept.filter(({ kind }) => kind === 'bank-fee')).toHaveLength(1);
  expect(book.ledger.balances.moneyOf('fees')).toBe(350);
});

test('the same drafts later, after an answer, are another record', async () => {
  const { kept, connection } = server();
  const book = await openBook(connection);
  await book.append([fee]);
  await book.append([fee]);
  expect(kept.filter(({ kind }) => kind === 'bank-fee')).toHaveLength(2);
});

test('a refusal adds nothing and is handed back', async () => {
  const { trouble, connection } = server();
  const book = await openBook(connection);
  trouble.next = 'refuse';
  expect(await book.append([fee])).toMatchObject({ ok: false, refusal: { message: 'Closed.' } });
  expect(book.ledger.balances.moneyOf('fees')).toBe(0);
});

test('what others wrote in between arrives with the own record', async () => {
  const { kept, connection } = server();
  const book = await openBook(connection);
  kept.push(made.movement('payment', { seller: 'ada', tender: 'cash', cents: 100 }));
  await book.append([fee]);
  expect(book.ledger.balances.moneyOf('cashbox')).toBe(100);
});

test('changes are shown as they would be and leave the book as it is', async () => {
  const { connection } = server();
  const book = await openBook(connection);
  const changes = [
    { ledger: 'money', account: 'bank', before: 0, after: -350 },
    { ledger: 'money', account: 'fees', before: 0, after: 350 },
  ];
  expect(book.changesBy(fee)).toEqual(changes);
  const [saved] = await savedBy(book, fee);
  expect(book.changesBy({ ...fee, cents: 500, replaces: saved ?? '' })).toMatchObject([
    { account: 'bank', before: -350, after: -500 },
    { account: 'fees', before: 350, after: 500 },
  ]);
  expect(book.ledger.balances.moneyOf('fees')).toBe(350);
});

async function savedBy(book: Book, draft: Draft): Promise<readonly string[]> {
  const answer = await book.append([draft]);
  return answer.ok ? answer.value.map(({ id }) => id) : [];
}
