import type { Header } from '../../records/header.ts';
import { type BookRecord, isMovementKind } from '../../records/record.ts';
import { BookReader } from '../read-book.ts';
import { readRecord } from '../read-record.ts';
import { BOOK_MAX, LINE_MAX } from '../text-lines.ts';
import { BYTE } from './line-bytes.ts';
import { QuickRecords } from './quick-records.ts';
import { RecordLook } from './record-look.ts';

/** A book whose every line is surely fine. */
export interface QuickRead {
  readonly header: Header;
  readonly records: QuickRecords;
}

/** Bytes of a usual record. */
const RECORD_LENGTH = 220;
/** Small enough for the fast memory of a processor. */
const PIECE = 256 * 1024;

/**
 * Reads a book's bytes about as fast as they can be gone through: most lines pass a look at their
 * bytes, the others are read the slow way, one by one. Of a book with any error, or with anything
 * that is not plain enough, it says only that it is not sure. That book is to be read by
 * BookReader, which says what is wrong with it.
 */
export class QuickReader {
  readonly #look = new RecordLook();
  readonly #records: QuickRecords;
  readonly #strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  #header: Header | undefined;
  #isSure = true;
  #taken = 0;
  /** The beginning of a line whose end has not come yet, and after it the piece at hand. */
  #bytes = new Uint8Array(PIECE * 2);
  #length = 0;

  /** @param size of the whole book in bytes, where it is known */
  constructor(size = 0) {
    this.#records = new QuickRecords(this.#look, Math.floor(size / RECORD_LENGTH));
  }

  /** False as soon as nothing will come of it. */
  get isSure(): boolean {
    return this.#isSure;
  }

  /** Takes the next bytes; the array may be used again by its owner afterwards. */
  push(bytes: Uint8Array): void {
    for (let at = 0; at < bytes.length && this.#isSure; at += PIECE) {
      this.#piece(bytes.subarray(at, at + PIECE));
    }
  }

  /** What was read; undefined where it is not surely fine. */
  end(): QuickRead | undefined {
    if (this.#length > 0) this.#piece(LINE_END);
    if (!this.#isSure || this.#header === undefined) return undefined;
    return { header: this.#header, records: this.#records };
  }

  #piece(piece: Uint8Array): void {
    this.#taken += piece.length;
    if (this.#taken > BOOK_MAX || this.#length > LINE_MAX) this.#isSure = false;
    if (!this.#isSure) return;
    const start = this.#length;
    this.#length += piece.length;
    if (this.#length > this.#bytes.length) {
      const more = new Uint8Array(this.#length * 2);
      more.set(this.#bytes.subarray(0, start));
      this.#bytes = more;
    }
    this.#bytes.set(piece, start);
    const last = piece.lastIndexOf(BYTE.newline);
    if (last < 0) return;
    const end = start + last + 1;
    this.#lines(end);
    this.#bytes.copyWithin(0, end, this.#length);
    this.#length -= end;
  }

  /** Goes through whole lines, each with its line end. */
  #lines(end: number): void {
    let start = this.#header === undefined ? this.#headerLine() : 0;
    while (start < end && this.#isSure) {
      const place = this.#look.look(this.#bytes, start);
      const kind = place < 0 ? undefined : this.#look.formAt()?.kind;
      const next = kind === undefined ? this.#lineEnd(start) : this.#look.line.at;
      const isAdded =
        kind === undefined ? this.#readSlowly(start, next) : this.#records.addPassed(kind, place);
      if (kind !== undefined && !isMovementKind(kind)) {
        this.#records.tell(kind, this.#text(start, next));
      }
      this.#isSure = isAdded && next - start <= LINE_MAX;
      start = next;
    }
  }

  /** The header is read as ever; it is one line. */
  #headerLine(): number {
    const end = this.#lineEnd(0);
    const reader = new BookReader();
    reader.push(this.#bytes.subarray(0, end));
    const { header, findings } = reader.end();
    this.#header = header;
    this.#isSure = !findings.some(({ severity }) => severity === 'error');
    return end;
  }

  #lineEnd(start: number): number {
    return this.#bytes.indexOf(BYTE.newline, start) + 1;
  }

  /** One line by way of a parsed value; false where the line is not a good record. */
  #readSlowly(start: number, end: number): boolean {
    const record = this.#recordOf(this.#bytes.subarray(start, end - 1));
    return record === 'nothing' || (record !== undefined && this.#records.addWhole(record));
  }

  #recordOf(bytes: Uint8Array): BookRecord | 'nothing' | undefined {
    try {
      const text = this.#strict.decode(bytes);
      if (text.trim() === '') return 'nothing';
      const line = text.endsWith('\r') ? text.slice(0, -1) : text;
      // What the line number would be told with is not told from here.
      return readRecord(JSON.parse(line), 0, line).record;
    } catch {
      return undefined;
    }
  }

  #text(start: number, end: number): string {
    return this.#strict.decode(this.#bytes.subarray(start, end));
  }
}

const LINE_END = Uint8Array.of(BYTE.newline);
