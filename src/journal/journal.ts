import type { Outcome } from '../base/outcome.ts';
import type { BookRecord } from '../records/record.ts';

/**
 * The storage port: an append-only set of records with an arrival number per group. Everything a
 * store engine must do is here, and journal.suite.ts holds every engine to it.
 */

/** Which book: a group's season. Every key in every store begins with the group. */
export interface BookName {
  readonly group: string;
  readonly season: string;
}

/** A record and the number under which it arrived: the only cursor for reading on. */
export interface Arrived {
  readonly arrival: number;
  readonly record: BookRecord;
}

/**
 * What an append did: which were new, and which the book already had word for word. A record that
 * is repeated within one append is added once and not named again.
 */
export interface Appended {
  readonly added: readonly Arrived[];
  readonly already: readonly string[];
}

/** Why nothing of an append was written. All of it is refused, or none; `detail` is one line. */
export type AppendRefusal =
  | { readonly name: 'same_id_with_other_content'; readonly ids: readonly string[] }
  | { readonly name: 'store_is_full'; readonly detail: string }
  | { readonly name: 'store_is_damaged'; readonly detail: string };

export interface Journal {
  readonly book: BookName;
  /**
   * Resolves only after the records would survive a power cut (where the engine can promise it).
   */
  append(records: readonly BookRecord[]): Promise<Outcome<Appended, AppendRefusal>>;
  /** Records of this book with an arrival number above `after`, in order of arrival. */
  readSince(after: number, most?: number): Promise<readonly Arrived[]>;
  /** The highest arrival number of the group so far, 0 when nothing has arrived. */
  lastArrival(): Promise<number>;
}
