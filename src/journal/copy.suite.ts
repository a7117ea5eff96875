import { describe, expect, test } from 'vitest';
import type { BookCopy, CopyStore } from './book-copy.ts';
import { four, payments, taken } from './test-payments.ts';

/**
 * What every engine of a device's copy must do, beside being a journal. An engine's own test calls
 * this with a function that opens a fresh, empty store.
 */
export function copySuite(name: string, openStore: () => Promise<CopyStore>): void {
  const withCopy = (what: string, check: (copy: BookCopy) => Promise<void>): void =>
    test(what, async () => {
      const store = await openStore();
      const copy = await store.openCopy({ group: 'wrenfield', season: 'spring-2027' });
      await check(copy).finally(() => store.close());
    });
  describe(`a device's copy on ${name}`, () => {
    writing(withCopy);
    taking(withCopy);
  });
}

type WithCopy = (what: string, check: (copy: BookCopy) => Promise<void>) => void;

const WHY = { name: 'season_is_closed', message: 'The season is closed.' };
const ids = (records: readonly { readonly id: string }[]): string[] => records.map(({ id }) => id);

function writing(withCopy: WithCopy): void {
  withCopy('a new copy has an empty outbox and no place', async (copy) => {
    expect(await copy.state()).toEqual({ outbox: [], place: undefined, aside: [] });
  });

  withCopy('what is written here is in the journal and in the outbox, tap by tap', async (copy) => {
    const [first, second, third] = four();
    taken(await copy.keep([first, second]));
    taken(await copy.keep([third]));
    expect(ids((await copy.journal.readSince(0)).map(({ record }) => record))).toEqual(
      ids([first, second, third]),
    );
    const { outbox } = await copy.state();
    expect(outbox.map((entry) => entry.ids)).toEqual([ids([first, second]), [third.id]]);
  });

  withCopy('the same again makes no second entry', async (copy) => {
    const records = payments(2);
    taken(await copy.keep(records));
    expect(taken(await copy.keep(records)).added).toEqual([]);
    expect((await copy.state()).outbox).toHaveLength(1);
  });

  withCopy('an id that stands for other content keeps nothing', async (copy) => {
    const [first, second] = four();
    taken(await copy.keep([first]));
    expect((await copy.keep([second, { ...first, cents: 1 }])).ok).toBe(false);
    expect((await copy.state()).outbox.map((entry) => entry.ids)).toEqual([[first.id]]);
    expect(await copy.journal.readSince(0)).toHaveLength(1);
  });

  withCopy('sent leaves the outbox and stays in the journal', async (copy) => {
    const [first, second] = four();
    taken(await copy.keep([first]));
    taken(await copy.keep([second]));
    const [entry] = (await copy.state()).outbox;
    await copy.sent(entry?.number ?? 0);
    expect((await copy.state()).outbox.map((each) => each.ids)).toEqual([[second.id]]);
    expect(await copy.journal.readSince(0)).toHaveLength(2);
  });

  withCopy('held keeps its reason, and can be let go again', async (copy) => {
    taken(await copy.keep([four()[0]]));
    const [entry] = (await copy.state()).outbox;
    const number = entry?.number ?? 0;
    await copy.hold(number, WHY);
    expect((await copy.state()).outbox).toEqual([{ ...entry, held: WHY }]);
    await copy.hold(number, undefined);
    expect((await copy.state()).outbox).toEqual([entry]);
    await copy.hold(number + 7, WHY);
    expect((await copy.state()).outbox).toEqual([entry]);
  });

  withCopy('records that the server lost go back into the outbox', async (copy) => {
    const records = payments(3);
    taken(await copy.take(records, { arrival: 3, id: records[2]?.id ?? '' }));
    await copy.putBack(ids(records.slice(1)), WHY);
    const { outbox } = await copy.state();
    expect(outbox).toMatchObject([{ ids: ids(records.slice(1)), held: WHY }]);
  });
}

function taking(withCopy: WithCopy): void {
  withCopy('what the server has is taken over together with the place', async (copy) => {
    const records = payments(3);
    const place = { arrival: 8, id: records[2]?.id ?? '' };
    expect(taken(await copy.take(records, place)).added).toHaveLength(3);
    expect(await copy.state()).toEqual({ outbox: [], place, aside: [] });
    expect(taken(await copy.take(records)).added).toEqual([]);
    expect((await copy.state()).place).toEqual(place);
  });

  withCopy('own records that come back from the server leave the outbox', async (copy) => {
    const [first, second, third] = four();
    taken(await copy.keep([first, second]));
    taken(await copy.keep([third]));
    taken(await copy.take([first, third], { arrival: 2, id: third.id }));
    expect((await copy.state()).outbox.map((entry) => entry.ids)).toEqual([[second.id]]);
    expect(await copy.journal.readSince(0)).toHaveLength(3);
  });

  withCopy('the same id with other content is kept aside, once, and ours stays', async (copy) => {
    const [first, second] = four();
    taken(await copy.keep([first]));
    const theirs = { ...first, cents: 1 };
    for (const _ of [1, 2]) {
      taken(await copy.take([theirs, second], { arrival: 2, id: second.id }));
    }
    const { outbox, aside, place } = await copy.state();
    expect(aside).toEqual([theirs]);
    expect(outbox.map((entry) => entry.ids)).toEqual([[first.id]]);
    expect(place?.arrival).toBe(2);
    const here = (await copy.journal.readSince(0)).map(({ record }) => record);
    expect(here).toEqual([first, second]);
  });
}
