/**
 * Bytes or text to lines, piece by piece, so that neither a long file nor a long line is ever held
 * whole. Strict: bytes that are not UTF-8 are told, never replaced.
 */

/** One line of a book is a few hundred bytes; a line beyond this is not read on. */
export const LINE_MAX = 1024 * 1024;
/** About three million records. */
export const BOOK_MAX = 1024 * 1024 * 1024;

const PIECE = 1024 * 1024;
const NEWLINE = 10;

export type LineFault =
  | { readonly name: 'line_too_long' }
  | { readonly name: 'file_too_long' }
  | { readonly name: 'not_utf8'; readonly near: string }
  | { readonly name: 'utf16' };

export interface LineListener {
  /** @param isWhole false for a last line that no line end follows */
  line(text: string, line: number, isWhole: boolean): void;
  fault(fault: LineFault, line: number): void;
}

export class TextLines {
  readonly #to: LineListener;
  readonly #strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  readonly #lenient = new TextDecoder('utf-8', { ignoreBOM: true });
  #line = 1;
  #taken = 0;
  #kept: Uint8Array[] = [];
  #keptLength = 0;
  /** Inside a line that was already told to be too long. */
  #isSkipping = false;
  #isStopped = false;

  constructor(to: LineListener) {
    this.#to = to;
  }

  /** Takes the next bytes; the array may be used again by its owner afterwards. */
  push(bytes: Uint8Array): void {
    for (let at = 0; at < bytes.length && !this.#isStopped; at += PIECE) {
      this.#piece(bytes.subarray(at, at + PIECE));
    }
  }

  end(): void {
    if (this.#isStopped || this.#isSkipping || this.#keptLength === 0) return;
    this.#decode(this.#withKept(new Uint8Array()), false);
  }

  #piece(piece: Uint8Array): void {
    if (this.#taken === 0 && isUtf16(piece)) {
      this.#stop({ name: 'utf16' });
      return;
    }
    this.#taken += piece.length;
    if (this.#taken > BOOK_MAX) {
      this.#stop({ name: 'file_too_long' });
      return;
    }
    const rest = this.#isSkipping ? this.#afterLongLine(piece) : piece;
    const first = this.#keptLength === 0 ? -1 : rest.indexOf(NEWLINE);
    if (first >= 0) this.#decode(this.#withKept(rest.subarray(0, first)), true);
    const last = rest.lastIndexOf(NEWLINE);
    if (last > first) this.#decode(rest.subarray(first + 1, last), true);
    this.#keep(rest.slice(last + 1));
  }

  #afterLongLine(piece: Uint8Array): Uint8Array {
    const end = piece.indexOf(NEWLINE);
    if (end < 0) return new Uint8Array();
    this.#isSkipping = false;
    this.#line += 1;
    return piece.subarray(end + 1);
  }

  #keep(rest: Uint8Array): void {
    if (this.#isSkipping || rest.length === 0) return;
    this.#kept.push(rest);
    this.#keptLength += rest.length;
    if (this.#keptLength <= LINE_MAX) return;
    this.#to.fault({ name: 'line_too_long' }, this.#line);
    this.#isSkipping = true;
    this.#kept = [];
    this.#keptLength = 0;
  }

  #withKept(piece: Uint8Array): Uint8Array {
    if (this.#keptLength === 0) return piece;
    const whole = new Uint8Array(this.#keptLength + piece.length);
    let at = 0;
    for (const part of [...this.#kept, piece]) {
      whole.set(part, at);
      at += part.length;
    }
    this.#kept = [];
    this.#keptLength = 0;
    return whole;
  }

  /** Tells whole lines, the last one without its line end. */
  #decode(block: Uint8Array, isWhole: boolean): void {
    let text: string;
    try {
      text = this.#strict.decode(block);
    } catch {
      this.#decodeByLine(block, isWhole);
      return;
    }
    this.#tell(text, isWhole);
  }

  #tell(text: string, isWhole: boolean): void {
    for (let start = 0; start <= text.length; ) {
      const found = text.indexOf('\n', start);
      const end = found < 0 ? text.length : found;
      this.#tellLine(text.slice(start, end), isWhole || found >= 0);
      start = end + 1;
    }
  }

  #tellLine(text: string, isWhole: boolean): void {
    if (text.length > LINE_MAX) this.#to.fault({ name: 'line_too_long' }, this.#line);
    else this.#to.line(text.endsWith('\r') ? text.slice(0, -1) : text, this.#line, isWhole);
    this.#line += 1;
  }

  /** Finds which lines of a block are not UTF-8; the others are told as they are. */
  #decodeByLine(block: Uint8Array, isWhole: boolean): void {
    for (let start = 0; start <= block.length; ) {
      const found = block.indexOf(NEWLINE, start);
      const end = found < 0 ? block.length : found;
      this.#decodeLine(block.subarray(start, end), isWhole || found >= 0);
      start = end + 1;
    }
  }

  #decodeLine(bytes: Uint8Array, isWhole: boolean): void {
    const text = this.#lenient.decode(bytes);
    try {
      this.#strict.decode(bytes);
    } catch {
      const at = text.indexOf('\uFFFD');
      const near = text.slice(Math.max(0, at - 20), at + 10);
      this.#to.fault({ name: 'not_utf8', near }, this.#line);
      this.#line += 1;
      return;
    }
    this.#tellLine(text, isWhole);
  }

  #stop(fault: LineFault): void {
    this.#isStopped = true;
    this.#to.fault(fault, this.#line);
  }
}

/** A UTF-16 byte-order mark, in either order (Unicode 16.0, section 23.8). */
function isUtf16(bytes: Uint8Array): boolean {
  const first = bytes[0];
  const second = bytes[1];
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}
