import type { Header } from '../records/header.ts';
import type { BookName, Journal } from './journal.ts';

/** A place that keeps books. One engine a folder under storage/; start/ picks which. */
export interface Store {
  /** Every book kept here, with its header, in the order of group and season ids. */
  books(): Promise<readonly Header[]>;
  /** Opens a book, making it where it is new (unless writing is stopped). */
  open(book: BookName): Promise<Journal>;
  /**
   * What integrity checks found, one line for each thing: while there is any, writing is stopped
   * and only undamaged records are read.
   */
  readonly damage: readonly string[];
  /** Finishes what is waiting, then lets go of the store. Nothing may be called afterwards. */
  close(): Promise<void>;
}
