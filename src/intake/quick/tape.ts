/**
 * What the quick look keeps of a book's lines: a long row of whole numbers of 32 bits, in pieces of
 * one size, so that nothing is copied as it grows and half a million records take some 25 MB. What
 * the numbers mean, only the parts know that put them there (part.ts).
 */

const PIECE_BITS = 18;
const PIECE_LENGTH = 1 << PIECE_BITS;
const LINE_USUAL = 4096;

export class Tape {
  readonly #pieces: Int32Array[] = [new Int32Array(PIECE_LENGTH)];
  #piece = this.#pieces[0] ?? new Int32Array();
  /** Where the next number goes; past the end of the piece where a line did not fit. */
  top = 0;

  put(value: number): void {
    // Beyond its end an array takes no value: `isFull` tells, and the line is looked at again.
    this.#piece[this.top] = value;
    this.top += 1;
  }

  /** Changes a number that stands in the piece that is being written. */
  set(at: number, value: number): void {
    this.#piece[at] = value;
  }

  get isFull(): boolean {
    return this.top > PIECE_LENGTH;
  }

  /** True where a usual line may not fit any more: each of its bytes puts at most one number. */
  get isNearlyFull(): boolean {
    return this.top > PIECE_LENGTH - LINE_USUAL;
  }

  /** Starts another piece. */
  turn(): void {
    this.#piece = new Int32Array(PIECE_LENGTH);
    this.#pieces.push(this.#piece);
    this.top = 0;
  }

  /** A number that stands for a place in the current piece, among all pieces. */
  placeOf(at: number): number {
    return ((this.#pieces.length - 1) << PIECE_BITS) | at;
  }

  /** The piece that a place is in, and where in it. */
  pieceAt(place: number): Int32Array {
    return this.#pieces[place >>> PIECE_BITS] ?? this.#piece;
  }

  within(place: number): number {
    return place & (PIECE_LENGTH - 1);
  }
}

/** Reads numbers off a tape from a place on. */
export class TapeReader {
  readonly #tape: Tape;
  #piece: Int32Array = new Int32Array();
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
    return value;
  }
}
