import { assert } from '../../base/assert.ts';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import { readUuidText, uuidText } from '../../base/uuid-bytes.ts';
import { UuidTable } from '../../base/uuid-table.ts';
import { allKinds, type Kind, type SetupRecord } from '../../records/record.ts';
import { ROW } from './id-rows.ts';
import type { PartFacts } from './part-facts.ts';
import { type PriceRow, priceRowsOf } from './price-rows.ts';
import { recordsKept } from './set-up-lines.ts';

/** Records of the book that name others, by the places of both, in step. */
export interface Namings {
  /** In rising order. */
  readonly from: Int32Array;
  /** -1 where no record of the book has the id that is named. */
  readonly to: Int32Array;
}

export interface Claims extends Namings {
  /** When each was written, as its instantNumber. */
  readonly written: Float64Array;
}

/** A record by its place in the book, and when it was written, as its instantNumber. */
export interface Written {
  readonly place: number;
  readonly written: number;
}

/**
 * What the parts of a book say, seen as one: a place is now that of a record in the whole book, the
 * parts one after the other.
 */
export class JoinedParts {
  readonly #parts: readonly PartFacts[];
  readonly #tables: readonly UuidTable[];
  /** The place of each part's first record, and at the end the number of all records. */
  readonly #starts: readonly number[];
  readonly #id = new Int32Array(4);

  private constructor(parts: readonly PartFacts[], tables: readonly UuidTable[]) {
    let start = 0;
    this.#starts = [0, ...parts.map(({ size }) => (start += size))];
    this.#parts = parts;
    this.#tables = tables;
  }

  /** Undefined where an id is there twice. */
  static of(parts: readonly PartFacts[]): JoinedParts | undefined {
    const tables = parts.map(({ ids }) => UuidTable.over(ids));
    const isDistinct = parts.every(({ ids }, part) =>
      tables.slice(0, part).every((before) => before.hasNoneOf(ids)),
    );
    return isDistinct ? new JoinedParts(parts, tables) : undefined;
  }

  get size(): number {
    return this.#starts.at(-1) ?? 0;
  }

  kindAt(place: number): Kind | undefined {
    const part = this.#partOf(place);
    const number = this.#parts[part]?.kinds[place - (this.#starts[part] ?? 0)];
    return number === undefined ? undefined : allKinds[number];
  }

  /** The place of an id; -1 where it is not there. */
  placeOf(id: string): number {
    return readUuidText(id, this.#id) ? this.#placeIn(this.#id, 0) : -1;
  }

  idAt(place: number): string {
    const part = this.#partOf(place);
    const words = this.#parts[part]?.ids.words ?? this.#id;
    const at = (place - (this.#starts[part] ?? 0)) * 4;
    return uuidText(words[at] ?? 0, words[at + 1] ?? 0, words[at + 2] ?? 0, words[at + 3] ?? 0);
  }

  /** True where the first was written later; of one moment the one with the later id. */
  isLater(one: Written, other: Written): boolean {
    const later = one.written - other.written;
    return (later || byText(this.idAt(one.place), this.idAt(other.place))) > 0;
  }

  /** What replaces or voids another record. */
  claims(): Claims {
    const rows = this.#parts.map(({ claims }) => claims);
    const namings = this.#namings(rows);
    const written = new Float64Array(namings.from.length);
    let claim = 0;
    for (const { claimsWritten } of this.#parts) {
      written.set(claimsWritten, claim);
      claim += claimsWritten.length;
    }
    return { ...namings, written };
  }

  /** Bounces and returned debits, and the payments and debits that they name. */
  pointers(): Namings {
    return this.#namings(this.#parts.map(({ pointers }) => pointers));
  }

  /** Product records and seasons, as far as they decide prices. */
  *priceRows(): Generator<PriceRow> {
    for (const [part, { prices }] of this.#parts.entries()) {
      yield* priceRowsOf(prices, this.#starts[part] ?? 0);
    }
  }

  /** The records of the set-up, whole, with their places; each part has kept their lines. */
  *setUp(): Generator<readonly [place: number, record: SetupRecord]> {
    for (const [part, { setUp }] of this.#parts.entries()) {
      assert(setUp !== undefined, 'lines that were kept');
      const start = this.#starts[part] ?? 0;
      for (const [place, record] of recordsKept(setUp)) yield [start + place, record];
    }
  }

  /** For each part, those of these places that are its own, as places in it. */
  byPart(places: Iterable<number>): Int32Array[] {
    const parts: number[][] = this.#parts.map(() => []);
    for (const place of places) {
      const part = this.#partOf(place);
      parts[part]?.push(place - (this.#starts[part] ?? 0));
    }
    return parts.map((own) => Int32Array.from(own));
  }

  /** Marks of all places, as marks of each part's own places. */
  marksByPart(marks: Uint8Array): Uint8Array[] {
    return this.#parts.map((_, part) => marks.slice(this.#starts[part], this.#starts[part + 1]));
  }

  /** A place of a part, in the whole book. */
  placeFrom(part: number, place: number): number {
    return (this.#starts[part] ?? 0) + place;
  }

  /** @param rows of each part, as IdRows has them */
  #namings(rows: readonly Int32Array[]): Namings {
    const count = sum(rows.map(({ length }) => length)) / ROW;
    const [from, to] = [new Int32Array(count), new Int32Array(count)];
    let naming = 0;
    for (const [part, own] of rows.entries()) {
      for (let at = 0; at < own.length; at += ROW) {
        from[naming] = (this.#starts[part] ?? 0) + (own[at] ?? 0);
        to[naming] = this.#placeIn(own, at + 1);
        naming += 1;
      }
    }
    return { from, to };
  }

  #placeIn(words: Int32Array, at: number): number {
    for (let part = 0; part < this.#tables.length; part += 1) {
      const place = this.#tables[part]?.placeIn(words, at) ?? -1;
      if (place >= 0) return (this.#starts[part] ?? 0) + place;
    }
    return -1;
  }

  #partOf(place: number): number {
    let part = 0;
    while (part < this.#parts.length - 1 && place >= (this.#starts[part + 1] ?? 0)) part += 1;
    return part;
  }
}
