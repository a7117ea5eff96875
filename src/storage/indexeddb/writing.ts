import { unwrap } from 'idb';
import { assert } from '../../base/assert.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Appended, AppendRefusal, Arrived, BookName } from '../../journal/journal.ts';
import { planAppend } from '../../journal/plan-append.ts';
import { BOOK_VERSION } from '../../records/header.ts';
import type { BookRecord } from '../../records/record.ts';
import { type Database, strictly, type Writing } from './layout.ts';

/**
 * Writes within one strict transaction: all of it or none. A refusal of `work` takes back what it
 * wrote; a full disk and a store that the browser took away are told by name.
 */
export async function inOneStep<T>(
  db: Database,
  work: (writing: Writing) => Promise<Outcome<T, AppendRefusal>>,
): Promise<Outcome<T, AppendRefusal>> {
  let writing: Writing | undefined;
  try {
    writing = strictly(db);
    // Nobody may find the transaction's own failure unheard while the work still runs.
    writing.done.catch(() => undefined);
    const outcome = await work(writing);
    if (!outcome.ok) {
      writing.abort();
      return outcome;
    }
    await writing.done;
    return outcome;
  } catch (error) {
    return refused(refusalOf(writing?.error ?? error));
  }
}

/**
 * Adds records to a book; what `planAppend` refuses writes nothing.
 *
 * @param known what `textsHere` gave for these records, where it was asked already
 */
export async function appendWithin(
  writing: Writing,
  book: BookName,
  records: readonly BookRecord[],
  known?: ReadonlyMap<string, string>,
): Promise<Outcome<Appended, AppendRefusal>> {
  const texts = known ?? (await textsHere(writing, book, records));
  const plan = planAppend(records, (id) => texts.get(id));
  if (!plan.ok) return plan;
  const { group, season } = book;
  await writing.objectStore('books').put({ book: BOOK_VERSION, group, season });
  const rows = writing.objectStore('records');
  let arrival = await lastArrival(rows, group);
  const added = plan.value.fresh.map(({ record, text }): Arrived & { text: string } => {
    arrival += 1;
    return { arrival, record, text };
  });
  // The store itself, without a promise for each row: a whole book comes in one go.
  const bare = unwrap(rows);
  for (const { arrival: at, record, text } of added) {
    bare.add({ group, season, arrival: at, id: record.id, text });
  }
  return done({
    added: added.map(({ arrival: at, record }) => ({ arrival: at, record })),
    already: plan.value.already,
  });
}

/** From so many records on, one reading of all between their ids is quicker than one for each. */
const MANY = 8;

/** Canonical texts that the book keeps under the ids of these records, and perhaps others. */
export async function textsHere(
  writing: Writing,
  book: BookName,
  records: readonly BookRecord[],
): Promise<ReadonlyMap<string, string>> {
  const { group, season } = book;
  const byId = writing.objectStore('records').index('byId');
  const ids = records.map(({ id }) => id).sort();
  const between = () =>
    byId.getAll(IDBKeyRange.bound([group, season, ids[0]], [group, season, ids.at(-1)]));
  const rows =
    ids.length >= MANY
      ? await between()
      : await Promise.all(ids.map((id) => byId.get([group, season, id])));
  return new Map(rows.flatMap((row) => (row === undefined ? [] : [[row.id, row.text]])));
}

/** @param rows the table of records, in any transaction */
export async function lastArrival(rows: KeysBackwards, group: string): Promise<number> {
  const range = IDBKeyRange.bound([group], [group, []]);
  const last = await rows.openKeyCursor(range, 'prev');
  return last === null ? 0 : last.key[1];
}

interface KeysBackwards {
  openKeyCursor(
    range: IDBKeyRange,
    direction: 'prev',
  ): Promise<{ readonly key: readonly [group: string, arrival: number] } | null>;
}

/** What a failure of the browser's store means; anything that is not one is a bug. */
function refusalOf(error: unknown): AppendRefusal {
  assert(error instanceof DOMException, `only the browser's store fails here: ${error}`);
  const detail = `${error.name}: ${error.message}`;
  if (error.name === 'QuotaExceededError') return { name: 'store_is_full', detail };
  return { name: 'store_is_damaged', detail };
}
