import { draftsOf } from '../../../simulation/convergence/drafts.ts';
import { faults } from '../../../simulation/convergence/faults.ts';
import type { Step } from '../../../simulation/convergence/history.ts';
import { type Life, mortal } from '../../../simulation/convergence/mortal.ts';
import { seenOn } from '../../../simulation/convergence/verdict.ts';
import type { CopyStore } from '../../../src/journal/book-copy.ts';
import { openIndexedDbStore } from '../../../src/storage/indexeddb/open-indexeddb-store.ts';
import { Book, PATIENCE_MS } from '../../../src/web/book.ts';
import { type BookAddress, httpConnection } from '../../../src/web/connection.ts';

/**
 * A phone of a history in a real page: the app's book over the browser's own database, which asks
 * the server over HTTP. A kill stops every call to the store from then on; the page is then left.
 */
export interface OpenPhone {
  readonly address: BookAddress;
  readonly store: string;
  readonly series: string;
  readonly skewMs: number;
  readonly fault: string;
}

/** What a phone shows, as JSON has no sets. */
export type SeenInPage = Omit<ReturnType<typeof seenOn>, 'told'>;

const TRUE_MS = Date.UTC(2027, 2, 1, 9);
const startedMs = Date.now();
let opened: { readonly book: Book; readonly store: CopyStore } | undefined;
let skewMs = 0;
const life: Life = { killAfter: Number.POSITIVE_INFINITY, calls: 0, killed: () => undefined };

async function open(asked: OpenPhone): Promise<void> {
  skewMs = asked.skewMs;
  const store = await openIndexedDbStore(asked.store);
  const fault = faults[asked.fault] ?? {};
  const connection = httpConnection(fetch.bind(globalThis));
  const copies: CopyStore = {
    ...store,
    openCopy: async (book) => {
      const copy = await store.openCopy(book);
      return mortal(fault.copy?.(copy) ?? copy, life);
    },
  };
  const through = fault.connection?.(connection, store, asked.address) ?? connection;
  const book = await Book.open(asked.address, through, {
    now: () => Date.now() - startedMs + TRUE_MS + skewMs,
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    today: () => '2027-03-01',
    // A save waits for the server's word here, however long that takes; nothing else waits.
    pause: async (ms) => {
      if (ms === PATIENCE_MS) await new Promise(() => undefined);
    },
    receiptSeries: fault.sameSeries ? 'A3B-' : asked.series,
    keeps: true,
    copies,
    windows: { tell: () => undefined, listen: () => () => undefined },
  });
  if (!book.ok) throw new Error(book.refusal.message);
  opened = { book: book.value, store };
  await book.value.refresh();
}

/** Ids that the person was told are saved; undefined where the phone was killed meanwhile. */
async function write(step: Step, at: number): Promise<readonly string[] | undefined> {
  const { book } = here();
  const drafts = draftsOf(book, step, at);
  if (drafts.length === 0) return [];
  return untilKilled(step.killAt, async () => {
    const outcome = await book.append(drafts);
    return outcome.ok ? outcome.value.map(({ id }) => id) : [];
  });
}

function exchange(step: Step): Promise<boolean | undefined> {
  return untilKilled(step.killAt, async () => {
    await here().book.refresh();
    return true;
  });
}

async function untilKilled<T>(killAt: number, work: () => Promise<T>): Promise<T | undefined> {
  life.calls = 0;
  life.killAfter = killAt || Number.POSITIVE_INFINITY;
  const killed = new Promise<undefined>((resolve) => {
    life.killed = () => resolve(undefined);
  });
  const outcome = await Promise.race([work(), killed]);
  life.killAfter = Number.POSITIVE_INFINITY;
  return outcome;
}

/** Everything on the phone is gone, where nothing waits on it. */
async function wipe(asked: OpenPhone): Promise<boolean> {
  const { store } = here();
  const { outbox } = await (await store.openCopy(asked.address)).state();
  if (outbox.length > 0) return false;
  await store.close();
  await new Promise<void>((resolve, reject) => {
    const dropping = indexedDB.deleteDatabase(asked.store);
    dropping.onsuccess = () => resolve();
    dropping.onerror = () => reject(dropping.error);
  });
  return true;
}

function seen(): SeenInPage {
  const { told: _told, ...shown } = seenOn({ book: here().book, told: new Set() });
  return shown;
}

function here() {
  if (opened === undefined) throw new Error('the phone was opened');
  return opened;
}

function skew(ms: number): void {
  skewMs = ms;
}

Object.assign(globalThis, { phone: { open, write, exchange, wipe, seen, skew } });

declare global {
  var phone: {
    readonly open: typeof open;
    readonly write: typeof write;
    readonly exchange: typeof exchange;
    readonly wipe: typeof wipe;
    readonly seen: typeof seen;
    readonly skew: typeof skew;
  };
}
