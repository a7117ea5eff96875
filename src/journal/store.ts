import type { Outcome } from '../base/outcome.ts';
import type { Header } from '../records/header.ts';
import type { BookName, Journal } from './journal.ts';

/** A place that keeps books. One engine a folder under storage/; start/ picks which. */
export interface Store {
  /** Every book kept here, with its header, in the order of group and season ids. */
  books(): Promise<readonly Header[]>;
  /** Opens a book, making it where it is new. */
  open(book: BookName): Promise<Journal>;
  /**
   * Writes a copy that is consistent although the store goes on being used, reads it back and
   * compares it record by record before it says it is good.
   */
  backup(path: string): Promise<Outcome<BackupMade, BackupRefusal>>;
  /** What integrity checks found at opening; writing is stopped while this is not empty. */
  readonly damage: readonly string[];
  close(): Promise<void>;
}

export interface BackupMade {
  readonly path: string;
  readonly records: number;
}

export type BackupRefusal =
  | { readonly name: 'target_exists'; readonly path: string }
  | { readonly name: 'store_is_damaged'; readonly detail: string }
  | { readonly name: 'copy_differs'; readonly detail: string };
