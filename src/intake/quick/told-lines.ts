import { type BookRecord, type Kind, setupKinds } from '../../records/record.ts';

/**
 * What is kept whole of a book that is read quickly: what decides prices beside what counts, which
 * is product records and the season's first day; or all of the set-up, for its names.
 */
export type Told = 'prices' | 'set-up';

export const toldKinds: Readonly<Record<Told, ReadonlySet<Kind>>> = {
  prices: new Set(['season', 'product']),
  'set-up': new Set(setupKinds),
};

/** Lines that were kept, as plain data: their bytes one after the other, and where each ends. */
export interface LinesKept {
  readonly told: Told;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Pairs of numbers: the place of the record, and the end of its line. */
  readonly ends: Int32Array<ArrayBuffer>;
}

/** Keeps the lines of some kinds as their bytes: few of them are ever asked for. */
export class ToldLines {
  #bytes: Uint8Array<ArrayBuffer>;
  #length = 0;
  readonly #ends: number[] = [];

  readonly #told: Told;

  /** @param expected how many bytes there may be; memory that is not used costs nothing */
  constructor(told: Told, expected: number) {
    this.#told = told;
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
    return { told: this.#told, bytes, ends: Int32Array.from(this.#ends) };
  }

  #grow(): void {
    const more = new Uint8Array(this.#length * 2);
    more.set(this.#bytes);
    this.#bytes = more;
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
