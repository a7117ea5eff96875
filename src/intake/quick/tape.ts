/**
 * What the quick look keeps of a book's lines: a long row of whole numbers, in pieces of one size,
 * so that nothing is copied as it grows. Nearly all are small and take 16 bits, so that half a
 * million records take some 12 MB: memory that is used for the first time is what costs most here.
 * What the numbers mean, only the parts know that put them there (part.ts).
 */

const PIECE_BITS = 18;
const PIECE_LENGTH = 1 << PIECE_BITS;
const LINE_USUAL = 4096;
/** Stands for -1. */
const MINUS_ONE = 0xfffe;
/** Two pieces of 16 bits follow, the higher first, of a number that is larger or negative. */
const WIDE = 0xffff;

export class Tape {
  readonly #pieces: Uint16Array[] = [new Uint16Array(PIECE_LENGTH)];
  #piece = this.#pieces[0] ?? new Uint16Array();
  /** Where the next number goes; past the end of the piece where a line did not fit. */
  top = 0;

  /** @param value of 32 bits, with a sign */
  put(value: number): void {
    if (value < 0 || value >= MINUS_ONE) this.#putWide(value);
    else {
      // Beyond its end an array takes no value: `isFull` tells, and the line is looked at again.
      this.#piece[this.top] = value;
      this.top += 1;
    }
  }

  /** Changes a small number that stands in the piece that is being written. */
  set(at: number, value: number): void {
    this.#piece[at] = value;
  }

  get isFull(): boolean {
    return this.top > PIECE_LENGTH;
  }

  /** True where a usual line may not fit any more: each of its bytes takes at most 16 bits here. */
  get isNearlyFull(): boolean {
    return this.top > PIECE_LENGTH - LINE_USUAL;
  }

  /** Starts another piece. */
  turn(): void {
    this.#piece = new Uint16Array(PIECE_LENGTH);
    this.#pieces.push(this.#piece);
    this.top = 0;
  }

  /** A number that stands for a place in the current piece, among all pieces. */
  placeOf(at: number): number {
    return ((this.#pieces.length - 1) << PIECE_BITS) | at;
  }

  /** The piece that a place is in, and where in it. */
  pieceAt(place: number): Uint16Array {
    return this.#pieces[place >>> PIECE_BITS] ?? this.#piece;
  }

  within(place: number): number {
    return place & (PIECE_LENGTH - 1);
  }

  #putWide(value: number): void {
    const isOne = value === -1;
    this.#piece[this.top] = isOne ? MINUS_ONE : WIDE;
    this.top += 1;
    if (isOne) return;
    this.#piece[this.top] = value >>> 16;
    this.#piece[this.top + 1] = value & 0xffff;
    this.top += 2;
  }
}

/** Reads numbers off a tape from a place on. */
export class TapeReader {
  readonly #tape: Tape;
  #piece: Uint16Array = new Uint16Array();
  #at = 0;

  constructor(tape: Tape) {
    this.#tape = tape;
  }

  goTo(place: number): void {
    this.#piece = this.#tape.pieceAt(place);
    this.#at = this.#tape.within(place);
  }

  next(): number {
    const value = this.#piece[this.#at] ?? 0;
    this.#at += 1;
    return value < MINUS_ONE ? value : this.#wide(value);
  }

  #wide(mark: number): number {
    if (mark === MINUS_ONE) return -1;
    const [high, low] = [this.#piece[this.#at] ?? 0, this.#piece[this.#at + 1] ?? 0];
    this.#at += 2;
    return (high << 16) | low;
  }
}
