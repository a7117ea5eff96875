import { describe, expect, test } from 'vitest';
import type { BookRecord } from '../records/record.ts';
import type { Journal } from './journal.ts';
import type { Store } from './store.ts';
import { four, payments, taken } from './test-payments.ts';

/**
 * What every engine of the storage port must do. An engine's own test calls this with a function
 * that opens a fresh, empty store.
 */
export function journalSuite(name: string, openStore: () => Promise<Store>): void {
  const spring = { group: 'wrenfield', season: 'spring-2027' };
  const withStore = (what: string, check: (store: Store) => Promise<void>): void =>
    test(what, async () => {
      const store = await openStore();
      await check(store).finally(() => store.close());
    });
  const withBook = (what: string, check: (book: Journal) => Promise<void>): void =>
    withStore(what, async (store) => check(await store.open(spring)));

  describe(`journal on ${name}`, () => {
    appending(withBook);
    refusing(withBook);
    reading(withBook);
    manyBooks(withStore);
  });
}

type WithBook = (what: string, check: (book: Journal) => Promise<void>) => void;
type WithStore = (what: string, check: (store: Store) => Promise<void>) => void;

function appending(withBook: WithBook): void {
  withBook('an empty book has nothing and stands at arrival 0', async (book) => {
    expect(await book.lastArrival()).toBe(0);
    expect(await book.readSince(0)).toEqual([]);
    expect(taken(await book.append([]))).toEqual({ added: [], already: [] });
    expect(await book.lastArrival()).toBe(0);
  });

  withBook(
    'records arrive in the order they are given and come back as they were',
    async (book) => {
      const records = payments(3);
      const { added, already } = taken(await book.append(records));
      expect(added).toEqual(records.map((record, at) => ({ arrival: at + 1, record })));
      expect(already).toEqual([]);
      expect(await book.readSince(0)).toEqual(added);
      expect(await book.lastArrival()).toBe(3);
    },
  );

  withBook('fields that no schema knows, and any writing, are kept', async (book) => {
    const [plain] = four();
    const odd = { ...plain, note: 'ñé中ع "\\\n\u0000 \ud800', later: { b: [1, null], a: {} } };
    // A field of a later version, which the type does not know.
    await book.append([odd as unknown as BookRecord]);
    expect((await book.readSince(0)).map(({ record }) => record)).toEqual([odd]);
  });

  withBook(
    'the same record again changes nothing, whatever the order of its keys',
    async (book) => {
      const [first, second, third] = four();
      await book.append([first, second]);
      const again = Object.fromEntries(Object.entries(second).reverse()) as unknown as BookRecord;
      const { added, already } = taken(await book.append([again, third, first]));
      expect(added).toEqual([{ arrival: 3, record: third }]);
      expect([...already].sort()).toEqual([first.id, second.id].sort());
      expect(await book.lastArrival()).toBe(3);
    },
  );

  withBook('an id repeated within one append is added once', async (book) => {
    const [record] = four();
    const { added, already } = taken(await book.append([record, { ...record }]));
    expect(added).toEqual([{ arrival: 1, record }]);
    expect(already).toEqual([]);
  });

  withBook('appends that wait together each get their own arrivals', async (book) => {
    const records = payments(40);
    const outcomes = await Promise.all(records.map((record) => book.append([record])));
    const arrivals = outcomes.map((outcome) => taken(outcome).added[0]?.arrival);
    expect(arrivals.toSorted((a = 0, b = 0) => a - b)).toEqual(records.map((_, at) => at + 1));
    const kept = (await book.readSince(0)).map(({ record }) => record.id);
    expect(kept.toSorted()).toEqual(records.map(({ id }) => id).toSorted());
  });
}

function refusing(withBook: WithBook): void {
  withBook(
    'the same id with other content is refused by name, and all of its append',
    async (book) => {
      const [first, second, third, fourth] = four();
      await book.append([first, second]);
      const changed = [
        { ...first, cents: 1 },
        { ...second, note: 'other' },
      ];
      expect(await book.append([third, ...changed, fourth])).toEqual({
        ok: false,
        refusal: { name: 'same_id_with_other_content', ids: [first.id, second.id] },
      });
      expect(await book.lastArrival()).toBe(2);
      expect((await book.readSince(0)).map(({ record }) => record)).toEqual([first, second]);
      expect(taken(await book.append([third])).added).toEqual([{ arrival: 3, record: third }]);
    },
  );

  withBook('one id with two contents within one append is refused', async (book) => {
    const [record, other] = four();
    const outcome = await book.append([other, record, { ...record, cents: 1 }]);
    expect(outcome).toEqual({
      ok: false,
      refusal: { name: 'same_id_with_other_content', ids: [record.id] },
    });
    expect(await book.readSince(0)).toEqual([]);
  });

  withBook('a refused append does not disturb those that wait with it', async (book) => {
    const [first, second, third] = four();
    await book.append([first]);
    const outcomes = await Promise.all([
      book.append([second]),
      book.append([{ ...first, cents: 1 }]),
      book.append([third]),
    ]);
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, false, true]);
    expect((await book.readSince(0)).map(({ arrival }) => arrival)).toEqual([1, 2, 3]);
  });

  withBook(
    'two appends of one id that wait together: the second is measured by the first',
    async (book) => {
      const [record] = four();
      const outcomes = await Promise.all([
        book.append([record]),
        book.append([record]),
        book.append([{ ...record, cents: 1 }]),
      ]);
      expect(taken(outcomes[0]).added).toHaveLength(1);
      expect(taken(outcomes[1])).toEqual({ added: [], already: [record.id] });
      expect(outcomes[2].ok).toBe(false);
    },
  );
}

function reading(withBook: WithBook): void {
  withBook('reading on by arrival gives every record once, page by page', async (book) => {
    const records = payments(10);
    await book.append(records);
    const seen: string[] = [];
    let after = 0;
    for (;;) {
      const page = await book.readSince(after, 3);
      expect(page.length).toBeLessThanOrEqual(3);
      seen.push(...page.map(({ record }) => record.id));
      const last = page.at(-1);
      if (last === undefined) break;
      after = last.arrival;
    }
    expect(seen).toEqual(records.map(({ id }) => id));
    expect(await book.readSince(10)).toEqual([]);
    expect(await book.readSince(0, 0)).toEqual([]);
  });

  withBook('a record older than the cursor by id and time is still read on', async (book) => {
    const [old, young] = four();
    await book.append([young]);
    const cursor = await book.lastArrival();
    await book.append([old]);
    expect((await book.readSince(cursor)).map(({ record }) => record)).toEqual([old]);
  });

  withBook('what was read cannot change what is kept', async (book) => {
    const [record] = four();
    await book.append([record]);
    const [read] = await book.readSince(0);
    Object.assign(read?.record ?? {}, { cents: 1 });
    expect((await book.readSince(0))[0]?.record).toEqual(record);
  });
}

function manyBooks(withStore: WithStore): void {
  const oak = { group: 'oak', season: 'spring' };
  const oakAutumn = { group: 'oak', season: 'autumn' };
  const ash = { group: 'ash', season: 'spring' };

  withStore('books are kept apart, and one id may stand in each', async (store) => {
    const [record] = four();
    for (const name of [oak, oakAutumn, ash]) {
      const book = await store.open(name);
      expect(taken(await book.append([record])).added).toHaveLength(1);
      expect((await book.readSince(0)).map(({ record: kept }) => kept)).toEqual([record]);
    }
  });

  withStore('arrival numbers run on through the seasons of a group, by group', async (store) => {
    const [first, second, third, fourth] = four();
    const spring = await store.open(oak);
    const autumn = await store.open(oakAutumn);
    const other = await store.open(ash);
    await spring.append([first]);
    await autumn.append([second]);
    await other.append([fourth]);
    await spring.append([third]);
    expect((await spring.readSince(0)).map(({ arrival }) => arrival)).toEqual([1, 3]);
    expect((await autumn.readSince(0)).map(({ arrival }) => arrival)).toEqual([2]);
    expect(await autumn.lastArrival()).toBe(3);
    expect(await other.lastArrival()).toBe(1);
    expect((await spring.readSince(1, 1)).map(({ record }) => record)).toEqual([third]);
  });

  withStore(
    'the store tells its books in order, and opens one twice as the same',
    async (store) => {
      for (const name of [oak, ash, oakAutumn]) await store.open(name);
      const [record] = four();
      await (await store.open(oak)).append([record]);
      expect(await (await store.open(oak)).readSince(0)).toHaveLength(1);
      expect(await store.books()).toEqual(
        [ash, oakAutumn, oak].map((name) => ({ book: 'cratebook/1', ...name })),
      );
      expect(store.damage).toEqual([]);
    },
  );
}
