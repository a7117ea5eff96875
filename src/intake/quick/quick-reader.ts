import { Header } from '../../records/header.ts';
import { BOOK_MAX, LINE_MAX } from '../text-lines.ts';
import { BYTE } from './line-bytes.ts';
import { PartMaker } from './part-for.ts';
import { QuickRecords } from './quick-records.ts';
import { RecordLook } from './record-look.ts';

/** Bytes of a usual record. */
const RECORD_LENGTH = 220;

/**
 * Reads a book's bytes about as fast as they can be gone through: most lines pass a look at their
 * bytes, the others are read the slow way, one by one. Of a book with any error, or with anything
 * that is not plain enough, it says only that it is not sure. That book is to be read by
 * BookReader, which says what is wrong with it.
 */
export class QuickReader {
  readonly #look = new RecordLook();
  readonly #records: QuickRecords;
  /** True where a header is still to come before the records. */
  #wantsHeader: boolean;
  #isSure = true;
  #taken = 0;
  /** The beginning of a line whose end has not come yet. */
  #begun: Uint8Array = new Uint8Array();

  /**
   * @param keepsSetUp true where the lines of set-up are asked for later
   * @param size in bytes of what will be read, where it is known
   * @param isStart false for whole lines of a book from beyond its header
   */
  constructor(keepsSetUp: boolean, size = 0, isStart = true) {
    this.#wantsHeader = isStart;
    this.#records = new QuickRecords(this.#look, keepsSetUp, Math.floor(size / RECORD_LENGTH));
  }

  /** False as soon as nothing will come of it. */
  get isSure(): boolean {
    return this.#isSure;
  }

  /** Takes the next bytes; the array may be used again by its owner once they are taken. */
  async push(bytes: Uint8Array): Promise<void> {
    this.#taken += bytes.length;
    if (this.#taken > BOOK_MAX) this.#isSure = false;
    if (!this.#isSure) return;
    const first = this.#begun.length === 0 ? 0 : bytes.indexOf(BYTE.newline) + 1;
    const last = bytes.lastIndexOf(BYTE.newline) + 1;
    if (first > 0) await this.#lines(joined(this.#begun, bytes.subarray(0, first)));
    if (last > first) await this.#lines(bytes.subarray(first, last));
    this.#begun = last > 0 ? bytes.slice(last) : joined(this.#begun, bytes);
    if (this.#begun.length > LINE_MAX) this.#isSure = false;
  }

  /** The records that were read; undefined where it is not surely fine. */
  async end(): Promise<QuickRecords | undefined> {
    if (this.#begun.length > 0) await this.#lines(joined(this.#begun, LINE_END));
    return this.#isSure && !this.#wantsHeader ? this.#records : undefined;
  }

  /** @param bytes whole lines, each with its end */
  async #lines(bytes: Uint8Array): Promise<void> {
    const start = this.#wantsHeader ? await this.#headerLine(bytes) : 0;
    const odd = this.#lookAt(bytes, start);
    if (odd.length === 0 || !this.#isSure) return;
    const { recordOfLine } = await import('./odd-lines.ts');
    for (const line of odd) {
      const record = recordOfLine(line);
      if (record === 'nothing') continue;
      this.#isSure &&= record !== undefined && this.#records.addWhole(record);
      if (record === undefined || !this.#isSure) return;
      this.#records.tell(line, 0, line.length);
    }
  }

  /** Takes the lines that pass the look, and gives those that do not, without their ends. */
  #lookAt(bytes: Uint8Array, from: number): readonly Uint8Array[] {
    const odd: Uint8Array[] = [];
    for (let start = from; start < bytes.length && this.#isSure; ) {
      const place = this.#look.look(bytes, start);
      const form = place < 0 ? undefined : this.#look.form;
      const next = form === undefined ? lineEnd(bytes, start) : this.#look.line.at;
      if (next - start > LINE_MAX) this.#isSure = false;
      else if (form === undefined) odd.push(bytes.subarray(start, next - 1));
      else {
        this.#isSure = this.#records.addPassed(form, place);
        this.#records.tell(bytes, start, next);
      }
      start = next;
    }
    return odd;
  }

  /** Takes the header and gives where the next line begins. */
  async #headerLine(bytes: Uint8Array): Promise<number> {
    const end = lineEnd(bytes, 0);
    if (!this.#headerPasses(bytes)) {
      const { isGoodHeader } = await import('./odd-lines.ts');
      this.#isSure &&= end <= LINE_MAX && isGoodHeader(bytes.subarray(0, end));
    }
    this.#wantsHeader = false;
    return end;
  }

  #headerPasses(bytes: Uint8Array): boolean {
    const { line } = this.#look;
    const { top } = line.tape;
    line.begin(bytes, 0);
    const passes = new PartMaker(line).partFor(Header).look(line) && line.passEnd();
    line.tape.top = top;
    return passes;
  }
}

const LINE_END = Uint8Array.of(BYTE.newline);

function lineEnd(bytes: Uint8Array, start: number): number {
  return bytes.indexOf(BYTE.newline, start) + 1;
}

function joined(start: Uint8Array, end: Uint8Array): Uint8Array {
  const whole = new Uint8Array(start.length + end.length);
  whole.set(start);
  whole.set(end, start.length);
  return whole;
}
