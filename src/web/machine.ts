import type { CopyStore } from '../journal/book-copy.ts';

/**
 * What the device gives: clock, randomness, store and the other windows of the app. Handed over by
 * main.tsx, so that a test can give its own.
 */
export interface Machine {
  /** Unix milliseconds. */
  now(): number;
  random(bytes: number): Uint8Array;
  /** Today's calendar day where the person is, `YYYY-MM-DD`. */
  today(): string;
  /** Resolves after so many milliseconds. */
  pause(ms: number): Promise<void>;
  /** Prefix of this device's own receipt numbers, such as `K7-`; kept on the device. */
  readonly receiptSeries: string;
  /** The copies of books that this device keeps. */
  readonly copies: CopyStore;
  /** False where nothing can be kept here: a save is then one only with the server's word. */
  readonly keeps: boolean;
  readonly windows: Windows;
}

/** The app's other windows on this device, which share the copies. */
export interface Windows {
  /** Says that a copy has changed. */
  tell(): void;
  /** @returns what ends the listening */
  listen(heard: () => void): () => void;
}
