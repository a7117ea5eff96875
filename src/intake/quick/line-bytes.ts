import { WordTable } from '../../base/word-table.ts';
import { ShapeTable } from './shape-table.ts';
import { Tape } from './tape.ts';

/** The bytes that give JSON its shape (RFC 8259, section 2). */
export const BYTE = {
  newline: 10,
  return: 13,
  space: 32,
  quote: 34,
  comma: 44,
  zero: 48,
  nine: 57,
  colon: 58,
  listStart: 91,
  backslash: 92,
  listEnd: 93,
  start: 123,
  end: 125,
} as const;

/** The line that is being looked at, where the look is, and where it writes what it keeps. */
export class LineBytes {
  readonly words = new WordTable();
  readonly shapes = new ShapeTable(this.words);
  readonly tape = new Tape();
  bytes: Uint8Array = new Uint8Array();
  at = 0;

  /** Goes to the place where a line begins. */
  begin(bytes: Uint8Array, start: number): void {
    this.bytes = bytes;
    this.at = start;
  }

  /** True where these bytes stand here. */
  has(wanted: Uint8Array): boolean {
    const { bytes, at: start } = this;
    for (let at = 0; at < wanted.length; at += 1) {
      if (bytes[start + at] !== wanted[at]) return false;
    }
    return true;
  }

  /** Goes past one byte, and spaces after it; false where another stands there. */
  pass(byte: number): boolean {
    if (this.bytes[this.at] !== byte) return false;
    this.at += 1;
    while (this.bytes[this.at] === BYTE.space) this.at += 1;
    return true;
  }

  /** The word in quotes that begins here, or -1; goes past it. */
  word(): number {
    if (this.bytes[this.at] !== BYTE.quote) return -1;
    const word = this.words.take(this.bytes, this.at + 1);
    this.at = this.words.end + 1;
    return word;
  }

  /**
   * Goes past the line's end; false where something else stands here. A line ends with its record:
   * no spaces, at most the carriage return of other systems.
   */
  passEnd(): boolean {
    const after = this.bytes[this.at] === BYTE.return ? this.at + 1 : this.at;
    this.at = after + 1;
    return this.bytes[after] === BYTE.newline;
  }
}
