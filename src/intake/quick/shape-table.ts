import type { WordTable } from '../../base/word-table.ts';

/** Beyond so many sets of keys, few come again. */
const SHAPES_MAX = 4096;
const SLOTS = SHAPES_MAX * 4;

/**
 * Numbers the sets of keys that a book's lines have, like {honey, jam}: the same few products stand
 * together again and again, and an object with these keys can then be used again.
 */
export class ShapeTable {
  readonly #words: WordTable;
  readonly #shapes: Int32Array[] = [];
  readonly #keys: string[][] = [];
  readonly #slots = new Int32Array(SLOTS);

  constructor(words: WordTable) {
    this.#words = words;
  }

  /** The keys of a set, in one fixed order. */
  keysOf(shape: number): readonly string[] {
    return this.#keys[shape] ?? [];
  }

  /**
   * The number of a set of keys; -1 where it is new and there are too many.
   * @param words the words of the keys, in rising order, `count` of them
   */
  take(words: Int32Array, count: number): number {
    let hash = count;
    for (let at = 0; at < count; at += 1) hash = Math.imul(hash, 31) + (words[at] ?? 0);
    hash = Math.imul(hash, 0x9e3779b1);
    for (let slot = (hash >>> 16) & (SLOTS - 1); ; slot = (slot + 1) & (SLOTS - 1)) {
      const shape = (this.#slots[slot] ?? 0) - 1;
      if (shape < 0) return this.#add(words, count, slot);
      if (isSame(this.#shapes[shape], words, count)) return shape;
    }
  }

  #add(words: Int32Array, count: number, slot: number): number {
    if (this.#shapes.length === SHAPES_MAX) return -1;
    const own = words.slice(0, count);
    this.#shapes.push(own);
    this.#keys.push(Array.from(own, (word) => this.#words.text(word)));
    this.#slots[slot] = this.#shapes.length;
    return this.#shapes.length - 1;
  }
}

function isSame(shape: Int32Array | undefined, words: Int32Array, count: number): boolean {
  if (shape === undefined || shape.length !== count) return false;
  for (let at = 0; at < count; at += 1) if (shape[at] !== words[at]) return false;
  return true;
}
