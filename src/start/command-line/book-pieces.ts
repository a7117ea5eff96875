import { readSync } from 'node:fs';
import { LINE_MAX } from '../../intake/text-lines.ts';

/** Bytes of a piece: small, for the fast memory of a processor, and threads end about together. */
export const PIECE = 256 * 1024;
/** Bytes that are read beyond a piece at a time, to the end of its last line. */
const BEYOND = 4 * 1024;
const NEWLINE = 10;

/** A file that several threads read together. */
export interface SharedFile {
  /** Open for reading; every thread reads by position. */
  readonly file: number;
  /** Bytes of the file, and of a piece of it. */
  readonly size: number;
  readonly piece: number;
  /** How many pieces are taken. */
  readonly taken: SharedArrayBuffer;
}

export function sharedFile(file: number, size: number, piece: number): SharedFile {
  return { file, size, piece, taken: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT) };
}

/**
 * A book file in pieces, for threads that read it together: each takes the next piece that nobody
 * has taken. A line belongs to the piece that its first byte is in, so every line is read once, by
 * one thread, and whole. What is handed out is one array, used again for the next piece.
 */
export class BookPieces {
  readonly #shared: SharedFile;
  /** How many pieces are taken, beside the first, which is never taken with `next`. */
  readonly #taken: Int32Array<SharedArrayBuffer>;
  #bytes: Uint8Array<ArrayBuffer>;

  constructor(shared: SharedFile) {
    this.#shared = shared;
    this.#taken = new Int32Array(shared.taken);
    this.#bytes = new Uint8Array(1 + shared.piece + BEYOND);
  }

  /** How much of the file is taken, from 0 to 1. */
  get share(): number {
    const { size, piece } = this.#shared;
    return Math.min(1, ((Atomics.load(this.#taken, 0) + 1) * piece) / size);
  }

  /** The lines of the first piece, for the one thread that reads the header. */
  first(): Uint8Array {
    return this.#lines(0);
  }

  /** The lines of the next piece, in the order of the file; undefined when all are taken. */
  next(): Uint8Array | undefined {
    const { size, piece } = this.#shared;
    const start = (Atomics.add(this.#taken, 0, 1) + 1) * piece;
    return start < size ? this.#lines(start) : undefined;
  }

  /** Leaves nothing to take, for any thread. */
  stop(): void {
    const { size, piece } = this.#shared;
    Atomics.store(this.#taken, 0, Math.ceil(size / piece));
  }

  #lines(start: number): Uint8Array {
    const end = Math.min(start + this.#shared.piece, this.#shared.size);
    // The byte before says whether a line begins at the start.
    const from = Math.max(0, start - 1);
    const length = this.#read(from, 0, end - from);
    const first = start === 0 ? 0 : this.#bytes.subarray(0, length).indexOf(NEWLINE) + 1;
    if (start > 0 && first === 0) return new Uint8Array();
    const last = this.#toLineEnd(from, length);
    return this.#bytes.subarray(first, last);
  }

  /**
   * Where the line ends that is cut by the end of the piece; reads on as far as that, but not to
   * the end of a line that is too long anyway.
   */
  #toLineEnd(from: number, piece: number): number {
    if (this.#bytes[piece - 1] === NEWLINE) return piece;
    let length = piece;
    while (length - piece <= LINE_MAX) {
      const more = this.#read(from + length, length, BEYOND);
      if (more === 0) return length;
      const at = this.#bytes.subarray(length, length + more).indexOf(NEWLINE);
      if (at >= 0) return length + at + 1;
      length += more;
    }
    return length;
  }

  /** Reads bytes from a position of the file to a place; gives how many there were. */
  #read(position: number, at: number, length: number): number {
    if (at + length > this.#bytes.length) {
      const more = new Uint8Array((at + length) * 2);
      more.set(this.#bytes);
      this.#bytes = more;
    }
    const { file } = this.#shared;
    let taken = 0;
    while (taken < length) {
      const read = readSync(file, this.#bytes, at + taken, length - taken, position + taken);
      if (read === 0) break;
      taken += read;
    }
    return taken;
  }
}
