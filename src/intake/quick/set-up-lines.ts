import type { SetupRecord } from '../../records/record.ts';

/** Lines that were kept, as plain data: their bytes one after the other, and where each ends. */
export interface LinesKept {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Pairs of numbers: the place of the record, and the end of its line. */
  readonly ends: Int32Array<ArrayBuffer>;
}

/** Keeps lines as their bytes. */
export class SetUpLines {
  #bytes: Uint8Array<ArrayBuffer>;
  #length = 0;
  readonly #ends: number[] = [];

  /** @param expected how many bytes there may be; memory that is not used costs nothing */
  constructor(expected: number) {
    this.#bytes = new Uint8Array(expected);
  }

  /** Keeps the line that stands in these bytes between two places. */
  add(place: number, from: Uint8Array, start: number, end: number): void {
    const first = this.#length;
    this.#length += end - start;
    if (this.#length > this.#bytes.length) this.#grow();
    const bytes = this.#bytes;
    // Lines are short: byte by byte is quicker than making a view of each to copy it whole.
    for (let at = start; at < end; at += 1) bytes[first + at - start] = from[at] ?? 0;
    this.#ends.push(place, this.#length);
  }

  kept(): LinesKept {
    const bytes = this.#bytes.subarray(0, this.#length);
    return { bytes, ends: Int32Array.from(this.#ends) };
  }

  #grow(): void {
    const more = new Uint8Array(this.#length * 2);
    more.set(this.#bytes);
    this.#bytes = more;
  }
}

const decoder = new TextDecoder();

/** The records of lines that were kept, which were found fine before, with their places. */
export function* recordsKept({
  bytes,
  ends,
}: LinesKept): Generator<readonly [place: number, record: SetupRecord]> {
  let start = 0;
  for (let at = 0; at < ends.length; at += 2) {
    const end = ends[at + 1] ?? start;
    yield [ends[at] ?? 0, JSON.parse(decoder.decode(bytes.subarray(start, end)))];
    start = end;
  }
}
