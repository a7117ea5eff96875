import type { BookRecord } from '../../records/record.ts';

/** Lines that were kept, as plain data: their bytes one after the other, and where each ends. */
export interface LinesKept {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Pairs of numbers: the place of the record, and the end of its line. */
  readonly ends: Int32Array<ArrayBuffer>;
}

/** Keeps the lines of set-up as their bytes: few of them are ever asked for. */
export class ToldLines {
  #bytes: Uint8Array<ArrayBuffer>;
  #length = 0;
  readonly #ends: number[] = [];

  /** @param expected how many bytes there may be; memory that is not used costs nothing */
  constructor(expected: number) {
    this.#bytes = new Uint8Array(expected);
  }

  add(place: number, line: Uint8Array): void {
    const start = this.#length;
    this.#length += line.length;
    if (this.#length > this.#bytes.length) {
      const more = new Uint8Array(this.#length * 2);
      more.set(this.#bytes.subarray(0, start));
      this.#bytes = more;
    }
    this.#bytes.set(line, start);
    this.#ends.push(place, this.#length);
  }

  kept(): LinesKept {
    return { bytes: this.#bytes.subarray(0, this.#length), ends: Int32Array.from(this.#ends) };
  }
}

const decoder = new TextDecoder();
const COMMA = 44;

/**
 * The records of lines that were kept, which were found fine before.
 * @param isWanted told the place of a record
 */
export function recordsKept(
  { bytes, ends }: LinesKept,
  isWanted: (place: number) => boolean,
): { readonly places: readonly number[]; readonly records: readonly BookRecord[] } {
  const places: number[] = [];
  // All that are wanted make one list in JSON: reading it at once is quicker than line by line.
  const list = new Uint8Array(bytes.length + ends.length);
  let [length, start] = [0, 0];
  for (let at = 0; at < ends.length; at += 2) {
    const place = ends[at] ?? 0;
    const end = ends[at + 1] ?? start;
    if (isWanted(place)) {
      list.set(bytes.subarray(start, end), length);
      list[length + end - start] = COMMA;
      length += end - start + 1;
      places.push(place);
    }
    start = end;
  }
  return {
    places,
    records: JSON.parse(`[${decoder.decode(list.subarray(0, Math.max(0, length - 1)))}]`),
  };
}
