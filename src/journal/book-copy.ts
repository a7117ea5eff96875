import type { Outcome } from '../base/outcome.ts';
import type { BookRecord } from '../records/record.ts';
import type { Appended, AppendRefusal, BookName, Journal } from './journal.ts';
import type { Store } from './store.ts';

/**
 * A device's own copy of a book: a journal with everything the device knows, and beside it the
 * outbox (what was written here and is not yet known to be on the server) and the place up to which
 * the server was read. copy.suite.ts holds every engine to it.
 */
export interface BookCopy {
  /** Everything the device has of this book, in the order in which it came here. */
  readonly journal: Journal;
  /** Outbox and place as they are kept now. */
  state(): Promise<CopyState>;
  /**
   * Keeps what was written here with one tap, and puts it into the outbox in the same step:
   * resolves only after both would survive a dead battery (where the engine can promise it).
   */
  keep(records: readonly BookRecord[]): Promise<Outcome<Appended, AppendRefusal>>;
  /**
   * Takes over what the server has. Ids of it leave the outbox, and the place moves in the same
   * step. A record whose id stands here for other content is kept aside; what is here stays.
   *
   * @param place without it the place stays where it was
   */
  take(
    records: readonly BookRecord[],
    place?: ServerPlace,
  ): Promise<Outcome<Appended, AppendRefusal>>;
  /** The server has it for good: the entry leaves the outbox, its records stay in the journal. */
  sent(number: number): Promise<void>;
  /** Keeps an entry back with the reason, or lets it go to the server again. */
  hold(number: number, held: Held | undefined): Promise<void>;
  /**
   * Puts records that are in the journal back into the outbox, as one held entry (together with an
   * entry that is left of the same tap).
   */
  putBack(ids: readonly string[], held: Held): Promise<void>;
}

export interface CopyState {
  /** In the order in which they were written. */
  readonly outbox: readonly OutboxEntry[];
  readonly place: ServerPlace | undefined;
  /** Records of the server whose ids stand for other content here. */
  readonly aside: readonly BookRecord[];
}

/** What was written with one tap: sent together, and taken by the server as a whole or not. */
export interface OutboxEntry {
  readonly number: number;
  readonly ids: readonly string[];
  /** Why it is not sent; without it, it waits to be sent. */
  readonly held?: Held;
}

/** A stable name and a line for people, as the server or the device gave them. */
export interface Held {
  readonly name: string;
  readonly message: string;
}

/** The last record that was read from the server, and the number under which it arrived there. */
export interface ServerPlace {
  readonly arrival: number;
  readonly id: string;
}

/** The store of a device. */
export interface CopyStore extends Store {
  openCopy(book: BookName): Promise<BookCopy>;
}
