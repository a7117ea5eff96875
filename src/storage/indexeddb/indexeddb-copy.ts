import { canonicalText } from '../../base/canonical-text.ts';
import { done } from '../../base/outcome.ts';
import type { BookCopy, CopyState, OutboxEntry } from '../../journal/book-copy.ts';
import type { BookName, Journal } from '../../journal/journal.ts';
import { outboxWithout, splitAside } from '../../journal/outbox-without.ts';
import { recordFrom } from '../../journal/plan-append.ts';
import type { BookRecord } from '../../records/record.ts';
import { type Database, strictly, type Writing, wholeBook } from './layout.ts';
import { appendWithin, inOneStep, textsHere } from './writing.ts';

/** A device's copy of a book in its browser: each change is one strict transaction. */
export function indexedDbCopy(db: Database, journal: Journal): BookCopy {
  const { book } = journal;
  const { group, season } = book;
  return {
    journal,
    state: () => readState(db, book),
    keep: (records) =>
      inOneStep(db, async (writing) => {
        const kept = await appendWithin(writing, book, records);
        if (!kept.ok) return kept;
        const [first] = kept.value.added;
        const ids = kept.value.added.map(({ record }) => record.id);
        if (first !== undefined) {
          await writing.objectStore('outbox').put({ group, season, number: first.arrival, ids });
        }
        return kept;
      }),
    take: (records, place) =>
      inOneStep(db, async (writing) => {
        const texts = await textsHere(writing, book, records);
        const fitting = await putAside(writing, book, records, texts);
        const taken = await appendWithin(writing, book, fitting, texts);
        if (!taken.ok) return taken;
        await clearOutbox(writing, book, fitting);
        if (place !== undefined) await writing.objectStore('places').put({ group, season, place });
        return done(taken.value);
      }),
    ...outboxOver(db, book),
  };
}

/** The changes to the outbox alone. */
function outboxOver(db: Database, book: BookName): Pick<BookCopy, 'sent' | 'hold' | 'putBack'> {
  const { group, season } = book;
  return {
    sent: async (number) => {
      const writing = strictly(db);
      await writing.objectStore('outbox').delete([group, season, number]);
      await writing.done;
    },
    hold: async (number, held) => {
      const writing = strictly(db);
      const outbox = writing.objectStore('outbox');
      const row = await outbox.get([group, season, number]);
      if (row !== undefined) {
        await outbox.put({ group, season, number, ids: row.ids, ...(held && { held }) });
      }
      await writing.done;
    },
    putBack: async (ids, held) => {
      const writing = strictly(db);
      const byId = writing.objectStore('records').index('byId');
      const rows = await Promise.all(ids.map((id) => byId.get([group, season, id])));
      const numbers = rows.flatMap((row) => (row === undefined ? [] : [row.arrival]));
      if (numbers.length > 0) {
        const number = Math.min(...numbers);
        const outbox = writing.objectStore('outbox');
        const entry = await outbox.get([group, season, number]);
        await outbox.put({ group, season, number, ids: [...(entry?.ids ?? []), ...ids], held });
      }
      await writing.done;
    },
  };
}

async function readState(db: Database, book: BookName): Promise<CopyState> {
  const reading = db.transaction(['outbox', 'places', 'aside']);
  const [outbox, place, aside] = await Promise.all([
    reading.objectStore('outbox').getAll(wholeBook(book)),
    reading.objectStore('places').get([book.group, book.season]),
    reading.objectStore('aside').getAll(wholeBook(book)),
  ]);
  return {
    outbox: outbox.map(({ number, ids, held }): OutboxEntry => {
      return held === undefined ? { number, ids } : { number, ids, held };
    }),
    place: place?.place,
    aside: aside.map(({ text }) => recordFrom(text)),
  };
}

/** Keeps records aside whose id stands for other content here; gives back the others. */
async function putAside(
  writing: Writing,
  book: BookName,
  records: readonly BookRecord[],
  texts: ReadonlyMap<string, string>,
): Promise<readonly BookRecord[]> {
  const { fitting, conflicting } = splitAside(records, (id) => {
    const text = texts.get(id);
    return text === undefined ? undefined : recordFrom(text);
  });
  const { group, season } = book;
  const aside = writing.objectStore('aside');
  await Promise.all(
    conflicting.map((record) =>
      aside.put({ group, season, id: record.id, text: canonicalText(record) }),
    ),
  );
  return fitting;
}

async function clearOutbox(
  writing: Writing,
  book: BookName,
  arrived: readonly BookRecord[],
): Promise<void> {
  const outbox = writing.objectStore('outbox');
  const before = await outbox.getAll(wholeBook(book));
  if (before.length === 0) return;
  const after = outboxWithout(before, new Set(arrived.map(({ id }) => id)));
  const left = new Map(after.map((entry) => [entry.number, entry]));
  const { group, season } = book;
  await Promise.all(
    before.map(({ number, ids }) => {
      const entry = left.get(number);
      if (entry === undefined) return outbox.delete([group, season, number]);
      if (entry.ids.length === ids.length) return undefined;
      return outbox.put({ ...entry, group, season });
    }),
  );
}
