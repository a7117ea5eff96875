import { done } from '../base/outcome.ts';
import type { BookRecord } from '../records/record.ts';
import type { BookCopy, CopyStore, OutboxEntry, ServerPlace } from './book-copy.ts';
import type { BookName, Journal } from './journal.ts';
import { memoryStore } from './memory-store.ts';
import { outboxWithout, splitAside } from './outbox-without.ts';

/** A device's copies that the device forgets: for tests, and where a browser keeps nothing. */
export function memoryCopies(): CopyStore {
  const store = memoryStore();
  const copies = new Map<string, BookCopy>();
  const openCopy = async (book: BookName): Promise<BookCopy> => {
    const key = `${book.group}/${book.season}`;
    const copy = copies.get(key) ?? memoryCopy(await store.open(book));
    copies.set(key, copy);
    return copy;
  };
  return { ...store, openCopy };
}

function memoryCopy(journal: Journal): BookCopy {
  let outbox: readonly OutboxEntry[] = [];
  let place: ServerPlace | undefined;
  const aside: BookRecord[] = [];
  const put = (entry: OutboxEntry): void => {
    const others = outbox.filter(({ number }) => number !== entry.number);
    outbox = [...others, entry].sort((a, b) => a.number - b.number);
  };
  return {
    journal,
    state: async () => ({ outbox, place, aside: [...aside] }),
    keep: async (records) => {
      const kept = await journal.append(records);
      if (!kept.ok) return kept;
      const [first] = kept.value.added;
      const ids = kept.value.added.map(({ record }) => record.id);
      if (first !== undefined) put({ number: first.arrival, ids });
      return kept;
    },
    take: async (records, to) => {
      const here = new Map((await journal.readSince(0)).map(({ record }) => [record.id, record]));
      const { fitting, conflicting } = splitAside(records, (id) => here.get(id));
      const taken = await journal.append(fitting);
      if (!taken.ok) return taken;
      aside.push(...splitAside(conflicting, (id) => aside.find((kept) => kept.id === id)).fresh);
      outbox = outboxWithout(outbox, new Set(fitting.map(({ id }) => id)));
      place = to ?? place;
      return done(taken.value);
    },
    sent: async (number) => {
      outbox = outbox.filter((entry) => entry.number !== number);
    },
    hold: async (number, held) => {
      const entry = outbox.find((each) => each.number === number);
      if (entry !== undefined) put({ number, ids: entry.ids, ...(held && { held }) });
    },
    putBack: async (ids, held) => {
      const here = await journal.readSince(0);
      const first = here.find(({ record }) => ids.includes(record.id));
      if (first === undefined) return;
      const number = first.arrival;
      const entry = outbox.find((each) => each.number === number);
      put({ number, ids: [...(entry?.ids ?? []), ...ids], held });
    },
  };
}
