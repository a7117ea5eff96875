import type { Seeded } from '../../src/base/seeded.ts';
import type { BookCopy, CopyStore } from '../../src/journal/book-copy.ts';
import { memoryCopies } from '../../src/journal/memory-copy.ts';
import type { KeptBook } from '../../src/server/library.ts';
import { Book, type Draft, PATIENCE_MS } from '../../src/web/book.ts';
import type { BookAddress, Connection } from '../../src/web/connection.ts';
import { ADDRESS, Link } from './link.ts';

/** Puts a known fault into a phone, to see that the check would find it. */
export interface Fault {
  readonly copy?: (copy: BookCopy) => BookCopy;
  readonly connection?: (
    connection: Connection,
    copies: CopyStore,
    book: BookAddress,
  ) => Connection;
  readonly sameSeries?: boolean;
}

const TRUE_MS = Date.UTC(2027, 2, 1, 9);
const SERIES = ['A3B-', 'C4D-', 'E6F-'];

/**
 * A phone of a history: the app's real book over a store that outlives it. A kill lets the next
 * call to the store begin or end, and nothing after it.
 */
export class Phone {
  readonly link: Link;
  /** Ids of records that the person was told are saved. */
  readonly told = new Set<string>();
  /** Milliseconds by which its clock is wrong. */
  skewMs = 0;
  #book: Book | undefined;
  #copies = memoryCopies();
  #killAfter = Number.POSITIVE_INFINITY;
  #calls = 0;
  #killed = false;
  #onKilled: () => void = () => undefined;
  readonly #number: number;
  readonly #random: Seeded;
  readonly #fault: Fault;
  #wiped = 0;

  constructor(server: KeptBook, number: number, random: Seeded, fault: Fault) {
    this.link = new Link(server);
    this.#number = number;
    this.#random = random;
    this.#fault = fault;
  }

  get book(): Book {
    if (this.#book === undefined) throw new Error('the phone was opened');
    return this.#book;
  }

  /** Opens the app anew over what the phone keeps. */
  async open(): Promise<void> {
    this.#killed = false;
    this.#calls = 0;
    this.#killAfter = Number.POSITIVE_INFINITY;
    const { connection } = this.link;
    const through = this.#fault.connection?.(connection, this.#copies, ADDRESS) ?? connection;
    const opened = await Book.open(ADDRESS, through, this.#machine());
    if (!opened.ok) throw new Error(opened.refusal.message);
    this.#book = opened.value;
    await opened.value.refresh();
  }

  async write(drafts: readonly Draft[], killAfter: number): Promise<void> {
    const outcome = await this.#untilKilled(() => this.book.append(drafts), killAfter);
    if (outcome?.ok) for (const { id } of outcome.value) this.told.add(id);
  }

  async exchange(killAfter: number): Promise<void> {
    await this.#untilKilled(() => this.book.refresh(), killAfter);
  }

  /** Where the phone is killed meanwhile, it is opened again; undefined then. */
  async #untilKilled<T>(work: () => Promise<T>, killAfter: number): Promise<T | undefined> {
    this.#calls = 0;
    this.#killAfter = killAfter;
    const killed = new Promise<undefined>((resolve) => {
      this.#onKilled = () => resolve(undefined);
    });
    const outcome = await Promise.race([work(), killed]);
    this.#killAfter = Number.POSITIVE_INFINITY;
    if (!this.#killed) return outcome;
    this.link.fate = 'answered';
    await this.open();
    return undefined;
  }

  /** Everything on the phone is gone, where nothing waits on it: a new phone in its place. */
  async wipe(): Promise<void> {
    const { outbox } = await (await this.#copies.openCopy(ADDRESS)).state();
    if (outbox.length > 0) return;
    this.#copies = memoryCopies();
    this.#wiped += 1;
    this.told.clear();
    await this.open();
  }

  get series(): string {
    if (this.#fault.sameSeries) return 'A3B-';
    return `${this.#wiped}${SERIES[this.#number] ?? ''}`;
  }

  #machine() {
    let ms = TRUE_MS;
    return {
      now: () => {
        ms += 1000;
        return ms + this.skewMs;
      },
      random: (bytes: number) => this.#random.bytes(bytes),
      today: () => '2027-03-01',
      // A save waits for the server's word here, however long that takes; nothing else waits.
      pause: async (ms: number) => {
        if (ms === PATIENCE_MS) await new Promise(() => undefined);
      },
      receiptSeries: this.series,
      keeps: true,
      copies: {
        ...this.#copies,
        openCopy: async (name: typeof ADDRESS) => {
          const copy = await this.#copies.openCopy(name);
          return this.#mortal(this.#fault.copy?.(copy) ?? copy);
        },
      },
      windows: { tell: () => undefined, listen: () => () => undefined },
    };
  }

  /** The copy as a process sees it that may be killed before or after any change to it. */
  #mortal(copy: BookCopy): BookCopy {
    const never = (): Promise<never> => {
      this.#killed = true;
      this.#onKilled();
      return new Promise<never>(() => undefined);
    };
    const through = async <T>(work: () => Promise<T>): Promise<T> => {
      this.#calls += 1;
      if (this.#killed || this.#calls > this.#killAfter) return never();
      const value = await work();
      return this.#calls >= this.#killAfter && this.#random.chance(50) ? never() : value;
    };
    return {
      journal: copy.journal,
      state: () => copy.state(),
      keep: (records) => through(() => copy.keep(records)),
      take: (records, place) => through(() => copy.take(records, place)),
      sent: (number) => through(() => copy.sent(number)),
      hold: (number, held) => through(() => copy.hold(number, held)),
      putBack: (ids, held) => through(() => copy.putBack(ids, held)),
    };
  }
}
