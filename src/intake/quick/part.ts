import type { LineBytes } from './line-bytes.ts';
import type { TapeReader } from './tape.ts';

/** Longer lists and objects are read the slow way. */
export const ENTRIES_MAX = 64;

/** One node of a schema, made ready for bytes. */
export interface Part {
  /**
   * Goes past the value that begins where the line is, and puts what is kept of it on the tape.
   * False where it is not surely fine and plain: the line is then read the slow way.
   */
  look(line: LineBytes): boolean;
  /** The value from what `look` put on the tape. The object may be used again for the next. */
  value(from: TapeReader): unknown;
  /** True where nothing is kept: free text, which moves nothing and names nothing. */
  readonly isLeftOut: boolean;
}
