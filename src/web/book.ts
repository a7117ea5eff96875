import { computed, signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { assert } from '../base/assert.ts';
import { canonicalText } from '../base/canonical-text.ts';
import { uuid7 } from '../base/id.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { ErrorAnswer } from '../contract/api.ts';
import { Ledger } from '../ledger/ledger.ts';
import { workingDay } from '../questions/working-day.ts';
import type { BookRecord, Kind, RecordOf } from '../records/record.ts';
import { type BookAddress, type Connection, NO_ANSWER } from './connection.ts';

/**
 * The open book: every record of it folded into a ledger, and the one way to add to it.
 * In a screen: `const book = useBook()`, then `book.ledger`, `book.currency`, `book.workingDay()`.
 * The screen is drawn again whenever a record arrives.
 */

/** What a screen hands in: everything but what the device stamps on a record. */
export type Draft<K extends Kind = Kind> = K extends Kind
  ? Omit<RecordOf<K>, 'id' | 'at' | 'by'>
  : never;

/** Clock and randomness, given by main.tsx, so that a test can give its own. */
export interface Machine {
  /** Unix milliseconds. */
  now(): number;
  random(bytes: number): Uint8Array;
  /** Today's calendar day where the person is, `YYYY-MM-DD`. */
  today(): string;
}

export type Appending = Outcome<readonly BookRecord[], ErrorAnswer>;

const RANDOM_BYTES = 10;

export class Book {
  readonly address: BookAddress;
  /** Grows with every record that arrives; reading it makes a screen follow. */
  readonly version = signal(0);
  /** What was saved last on this device, offered with Undo at the top of the page. */
  readonly saved = signal<readonly BookRecord[]>([]);
  readonly #connection: Connection;
  readonly #machine: Machine;
  readonly #ledger: Ledger;
  /** Stamped records whose answer never came, by their drafts: sent again under the same ids. */
  readonly #unsure = new Map<string, readonly BookRecord[]>();
  readonly #sending = new Map<string, Promise<Appending>>();
  #last: number;
  #stamped = 0;
  readonly #season = computed(() => {
    this.version.value;
    return this.#ledger.setup.season;
  });

  private constructor(
    address: BookAddress,
    connection: Connection,
    machine: Machine,
    ledger: Ledger,
    last: number,
  ) {
    this.address = address;
    this.#connection = connection;
    this.#machine = machine;
    this.#ledger = ledger;
    this.#last = last;
  }

  /** Reads every record of a book and folds it. */
  static async open(
    address: BookAddress,
    connection: Connection,
    machine: Machine,
  ): Promise<Outcome<Book, ErrorAnswer>> {
    const answer = await connection.recordsAfter(address, 0);
    if (!answer.ok) return answer;
    const ledger = Ledger.of(answer.value.records.map((arrived) => arrived.record));
    return done(new Book(address, connection, machine, ledger, answer.value.last));
  }

  /** The folded book. Reading it ties the screen to every later change. */
  get ledger(): Ledger {
    this.version.value;
    return this.#ledger;
  }

  /** ISO 4217 code of the season; empty until the season has been set up. */
  get currency(): string {
    return this.#season.value?.currency ?? '';
  }

  get name(): string {
    return this.#season.value?.name ?? this.address.season;
  }

  /** The day a screen is about and a form begins with (`YYYY-MM-DD`): mostly today. */
  workingDay(): string {
    return workingDay(this.ledger, this.#machine.today());
  }

  /**
   * Adds records: all of them or none. Resolves when the server has them for good. The same drafts
   * sent again after no answer came are the same records, so a second tap never makes a double.
   */
  append(drafts: readonly Draft[]): Promise<Appending> {
    const said = canonicalText(drafts);
    const running = this.#sending.get(said);
    if (running !== undefined) return running;
    const sending = this.#send(said, drafts).finally(() => this.#sending.delete(said));
    this.#sending.set(said, sending);
    return sending;
  }

  /** Takes over what others have written since. */
  async refresh(): Promise<Outcome<number, ErrorAnswer>> {
    const answer = await this.#connection.recordsAfter(this.address, this.#last);
    if (!answer.ok) return answer;
    for (const { record } of answer.value.records) this.#ledger.add(record);
    this.#last = Math.max(this.#last, answer.value.last);
    if (answer.value.records.length > 0) this.version.value += 1;
    return done(answer.value.records.length);
  }

  /** The book as it would be with these drafts, on a copy: for "after" figures beside a form. */
  supposing(drafts: readonly Draft[]): Ledger {
    const copy = Ledger.of(this.ledger.standing.records());
    for (const draft of drafts) copy.add(this.#stamp(draft));
    return copy;
  }

  async #send(said: string, drafts: readonly Draft[]): Promise<Appending> {
    const records = this.#unsure.get(said) ?? drafts.map((draft) => this.#stamp(draft));
    const answer = await this.#connection.append(this.address, records);
    if (!answer.ok) {
      if (answer.refusal.name === NO_ANSWER) this.#unsure.set(said, records);
      else this.#unsure.delete(said);
      return refused(answer.refusal);
    }
    this.#unsure.delete(said);
    for (const record of records) this.#ledger.add(record);
    const arrivals = answer.value.added.map((added) => added.arrival);
    const gapless = arrivals.length === records.length && Math.min(...arrivals) === this.#last + 1;
    if (gapless) this.#last = Math.max(...arrivals);
    this.saved.value = records;
    this.version.value += 1;
    // Others wrote in between: read from the last number that is surely ours.
    if (!gapless) await this.refresh();
    return done(records);
  }

  #stamp(draft: Draft): BookRecord {
    // Records of one tap follow each other by a millisecond, so that their order is kept.
    this.#stamped = Math.max(this.#machine.now(), this.#stamped + 1);
    const id = uuid7(this.#stamped, this.#machine.random(RANDOM_BYTES));
    const at = new Date(this.#stamped).toISOString();
    // The draft carries its own kind's fields; the compiler cannot follow the union through a
    // spread.
    return { id, at, by: 'manager', ...draft } as BookRecord;
  }
}

export const BookContext = createContext<Book | undefined>(undefined);

/** The open book; only screens below the app's frame may ask, which always has one. */
export function useBook(): Book {
  const book = useContext(BookContext);
  assert(book !== undefined, 'a screen is drawn only while a book is open');
  // Reading the version ties this screen to later records.
  book.version.value;
  return book;
}
