/** A table as plain data that can go from one thread to another. */
export interface UuidData {
  /** Four numbers an id, by place. */
  readonly words: Int32Array<ArrayBuffer>;
  /** By slot, as UuidTable keeps them. */
  readonly slots: Int32Array<ArrayBuffer>;
}

/**
 * Gives each UUID the number of its place in the order of adding, from 0, like IdTable does for
 * texts. The 128 bits are kept as four whole numbers, so that half a million ids make no string and
 * take 24 bytes each (open addressing with linear probing).
 */
export class UuidTable {
  /** Four words of 32 bits an id, by place. */
  #words: Int32Array<ArrayBuffer>;
  /**
   * By slot: place + 1 in as many low bits as a slot's number has, and above them the bits of the
   * hash that do not say the slot. So another id in a slot is nearly always told without a look at
   * its words, which are far away in memory. 0 is an empty slot. The length is a power of two.
   */
  #slots: Int32Array<ArrayBuffer>;
  #size = 0;

  /** @param expected how many ids there may be; more only take longer */
  constructor(expected = 0) {
    const room = Math.max(IDS_FIRST, expected);
    this.#words = new Int32Array(room * 4);
    this.#slots = new Int32Array(2 ** Math.ceil(Math.log2(room * SPARE)));
  }

  get size(): number {
    return this.#size;
  }

  /** A table from what another one has as `data`, which it then shares. */
  static over({ words, slots }: UuidData): UuidTable {
    const table = new UuidTable();
    table.#words = words;
    table.#slots = slots;
    table.#size = words.length / 4;
    return table;
  }

  /** The table as plain data, to be read, or handed on once the table is not needed. */
  get data(): UuidData {
    return { words: this.#words.subarray(0, this.#size * 4), slots: this.#slots };
  }

  /** True where none of the ids that another table has is here. */
  hasNoneOf({ words }: UuidData): boolean {
    for (let at = 0; at < words.length; at += 4) {
      if (this.placeIn(words, at) >= 0) return false;
    }
    return true;
  }

  /** The place of the id whose four numbers stand in an array, or -1. */
  placeIn(words: Int32Array, at: number): number {
    return this.placeOf(words[at] ?? 0, words[at + 1] ?? 0, words[at + 2] ?? 0, words[at + 3] ?? 0);
  }

  /** The id's place, or -1 where it was never added. */
  placeOf(a: number, b: number, c: number, d: number): number {
    const kept = this.#slots[this.#slotOf(a, b, c, d, hashOf(a, b, c, d))] ?? 0;
    return (kept & (this.#slots.length - 1)) - 1;
  }

  /** Adds an id; false where it is already there. Each word is taken as 32 bits with a sign. */
  add(a: number, b: number, c: number, d: number): boolean {
    if (this.#size * 4 === this.#words.length) this.#grow();
    const hash = hashOf(a, b, c, d);
    const slot = this.#slotOf(a, b, c, d, hash);
    if (this.#slots[slot] !== 0) return false;
    const at = this.#size * 4;
    this.#words[at] = a;
    this.#words[at + 1] = b;
    this.#words[at + 2] = c;
    this.#words[at + 3] = d;
    this.#size += 1;
    this.#slots[slot] = (hash & -this.#slots.length) | this.#size;
    return true;
  }

  /** The slot that holds the id, or the empty one where it belongs. */
  #slotOf(a: number, b: number, c: number, d: number, hash: number): number {
    const slots = this.#slots;
    const words = this.#words;
    const mask = slots.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const kept = slots[slot] ?? 0;
      if (kept === 0) return slot;
      if (((kept ^ hash) & ~mask) !== 0) continue;
      const at = (kept & mask) * 4 - 4;
      // The last words hold the random bits: they nearly always tell two ids apart.
      if (words[at + 3] === d && words[at + 2] === c && words[at + 1] === b && words[at] === a) {
        return slot;
      }
    }
  }

  #grow(): void {
    const words = this.#words;
    this.#words = new Int32Array(words.length * 2);
    this.#words.set(words);
    this.#slots = new Int32Array(this.#slots.length * 2);
    for (let place = 0; place < this.#size; place += 1) {
      const at = place * 4;
      const [a = 0, b = 0, c = 0, d = 0] = words.subarray(at, at + 4);
      const hash = hashOf(a, b, c, d);
      this.#slots[this.#slotOf(a, b, c, d, hash)] = (hash & -this.#slots.length) | (place + 1);
    }
  }
}

const IDS_FIRST = 4096;
/** Slots for each id: with fewer, more ids meet in one slot. */
const SPARE = 1.2;

function hashOf(a: number, b: number, c: number, d: number): number {
  const mixed = Math.imul(a ^ Math.imul(b, 0x9e3779b1), 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35) ^ d;
  return mixed ^ (mixed >>> 15);
}
