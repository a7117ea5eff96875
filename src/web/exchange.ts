import { done, type Outcome } from '../base/outcome.ts';
import type { ErrorAnswer, RecordsAnswer } from '../contract/api.ts';
import { PAGE_MAX_RECORDS } from '../contract/limits.ts';
import type { BookCopy, OutboxEntry, ServerPlace } from '../journal/book-copy.ts';
import type { AppendRefusal, Arrived } from '../journal/journal.ts';
import type { BookRecord } from '../records/record.ts';
import { isAboutRecords } from './about-records.ts';
import type { BookAddress, Connection } from './connection.ts';
import { say } from './say.ts';

/**
 * Sends a device's outbox and reads what the server has. Both can be cut off anywhere, by a lost
 * answer or a killed browser, and begun again: nothing is lost and nothing doubled, as ids are made
 * when a record is written and the outbox is only cleared by the server's word.
 */
export interface Exchange {
  readonly copy: BookCopy;
  readonly connection: Connection;
  readonly address: BookAddress;
}

/** Records in one request: small enough for the server's limit on a body (see contract/limits). */
const SEND_AT_ONCE = 250;

/** Records that a device keeps in one step while it reads the server. */
const KEEP_AT_ONCE = 100;

export const NOT_ON_SERVER = 'not_on_server';

/**
 * Sends what waits, oldest first. What the server refuses for its content is held back with the
 * reason; anything else ends the sending, and all that is left waits on.
 *
 * @returns true where there was something to send
 */
export async function sendOutbox(exchange: Exchange): Promise<Outcome<boolean, ErrorAnswer>> {
  const { outbox } = await exchange.copy.state();
  const waiting = outbox.filter(({ held }) => held === undefined);
  const [first] = waiting;
  if (first === undefined) return done(false);
  const since = await exchange.copy.journal.readSince(first.number - 1);
  const byId = new Map(since.map(({ record }) => [record.id, record]));
  for (const part of parts(waiting)) {
    const sent = await sendPart(exchange, part, byId);
    if (!sent.ok) return sent;
  }
  return done(true);
}

/** Entries in order, in groups of about as many records as go into one request. */
function parts(entries: readonly OutboxEntry[]): OutboxEntry[][] {
  const all: OutboxEntry[][] = [];
  let room = 0;
  for (const entry of entries) {
    const last = all.at(-1);
    if (last !== undefined && entry.ids.length <= room) last.push(entry);
    else {
      all.push([entry]);
      room = SEND_AT_ONCE;
    }
    room -= entry.ids.length;
  }
  return all;
}

async function sendPart(
  exchange: Exchange,
  entries: readonly OutboxEntry[],
  byId: ReadonlyMap<string, BookRecord>,
): Promise<Outcome<void, ErrorAnswer>> {
  const { copy, connection, address } = exchange;
  const records = entries.flatMap(({ ids }) => ids.flatMap((id) => byId.get(id) ?? []));
  const answer = await connection.append(address, records);
  if (answer.ok) {
    for (const { number } of entries) await copy.sent(number);
    return done(undefined);
  }
  if (!isAboutRecords(answer.refusal)) return answer;
  const [only, ...others] = entries;
  if (only !== undefined && others.length === 0) {
    const { name, message } = answer.refusal;
    await copy.hold(only.number, { name, message });
    return done(undefined);
  }
  // One of them is refused: each goes by itself, so that the others are not held up.
  for (const entry of entries) {
    const sent = await sendPart(exchange, [entry], byId);
    if (!sent.ok) return sent;
  }
  return done(undefined);
}

/** What reading came to; `unkept` were read but could not be kept on the device. */
export interface ReadServer {
  /** What the copy took over, under the copy's own arrival numbers. */
  readonly kept: readonly Arrived[];
  readonly unkept: readonly BookRecord[];
  readonly full?: AppendRefusal;
}

/**
 * Reads on from the place reached before. The record at that place is read again: where it is
 * another one, the server is not the one that was followed so far (an older backup, another data
 * folder), and all of it is read anew.
 *
 * @param first what the server has from its first record on, where it was asked just now
 */
export async function readServer(
  exchange: Exchange,
  first?: RecordsAnswer,
): Promise<Outcome<ReadServer, ErrorAnswer>> {
  const { copy, connection, address } = exchange;
  const kept: Arrived[] = [];
  const reached = (await copy.state()).place;
  let place = reached?.arrival === 0 ? undefined : reached;
  for (;;) {
    const after = place === undefined ? 0 : place.arrival - 1;
    const answer =
      first !== undefined && place === undefined
        ? done(first)
        : await connection.recordsAfter(address, after);
    if (!answer.ok) return answer;
    const { records } = answer.value;
    const [known] = records;
    if (place !== undefined && (known?.arrival !== place.arrival || known.record.id !== place.id)) {
      return readAnew(exchange);
    }
    const fresh = place === undefined ? records : records.slice(1);
    const last = fresh.at(-1);
    if (last === undefined) return done({ kept, unkept: [] });
    place = placeOf(last);
    const taken = await takeInParts(copy, recordsOf(fresh), place);
    if (!taken.ok) return done({ kept, unkept: recordsOf(fresh), full: taken.refusal });
    for (const added of taken.value) kept.push(added);
    if (records.length < PAGE_MAX_RECORDS) return done({ kept, unkept: [] });
  }
}

/** Part by part, so that keeping a whole season holds no tap up; the place moves with the last. */
async function takeInParts(
  copy: BookCopy,
  records: readonly BookRecord[],
  place: ServerPlace,
): Promise<Outcome<readonly Arrived[], AppendRefusal>> {
  const kept: Arrived[] = [];
  for (let from = 0; from < records.length; from += KEEP_AT_ONCE) {
    const to = from + KEEP_AT_ONCE;
    const part = records.slice(from, to);
    const taken = await copy.take(part, to < records.length ? undefined : place);
    if (!taken.ok) return taken;
    kept.push(...taken.value.added);
  }
  return done(kept);
}

/**
 * Takes over all that the server has. What is here, was on the server once and is not any more goes
 * into the outbox, held back: a person says whether it is sent again. The place moves at the end,
 * so that an interrupted reading begins anew.
 */
async function readAnew(exchange: Exchange): Promise<Outcome<ReadServer, ErrorAnswer>> {
  const { copy, connection, address } = exchange;
  const there = new Set<string>();
  let place: ServerPlace | undefined;
  for (;;) {
    const answer = await connection.recordsAfter(address, place?.arrival ?? 0);
    if (!answer.ok) return answer;
    const { records } = answer.value;
    for (const { record } of records) there.add(record.id);
    const taken = await copy.take(recordsOf(records));
    if (!taken.ok) return done({ kept: [], unkept: recordsOf(records), full: taken.refusal });
    const last = records.at(-1);
    if (last !== undefined) place = placeOf(last);
    if (records.length < PAGE_MAX_RECORDS) break;
  }
  const { outbox } = await copy.state();
  for (const id of outbox.flatMap(({ ids }) => ids)) there.add(id);
  const here = await copy.journal.readSince(0);
  const missing = here.map(({ record }) => record.id).filter((id) => !there.has(id));
  const message = say`The server does not have these any more. It may have been restored from a
    backup, or keep another book of this name.`;
  if (missing.length > 0) await copy.putBack(missing, { name: NOT_ON_SERVER, message });
  await copy.take([], place ?? { arrival: 0, id: '' });
  return done({ kept: [], unkept: [] });
}

function recordsOf(arrived: readonly { readonly record: BookRecord }[]): readonly BookRecord[] {
  return arrived.map(({ record }) => record);
}

function placeOf(last: { readonly arrival: number; readonly record: BookRecord }): ServerPlace {
  return { arrival: last.arrival, id: last.record.id };
}
