import { assert } from './assert.ts';

/** Longer text is no word: ids, days and names of accounts are shorter. */
export const WORD_MAX = 96;

const SLOTS_FIRST = 1024;
const QUOTE = 34;
const BACKSLASH = 92;
const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/**
 * Gives each word that stands in a file's bytes a number, from 0, and keeps one string of it. The
 * few words of a book (ids, days, kinds) come again on every line; finding their number takes no
 * new string (open addressing with linear probing; hash: FNV-1a).
 */
export class WordTable {
  readonly #texts: string[] = [];
  /** The bytes of all words, one after the other, and where each begins. */
  #bytes = new Uint8Array(SLOTS_FIRST * 16);
  #starts = new Int32Array(SLOTS_FIRST);
  /** Place + 1 by slot; 0 is an empty slot. The length is a power of two. */
  #slots = new Int32Array(SLOTS_FIRST);
  #hashes = new Int32Array(SLOTS_FIRST);
  /** Where the word that was taken last ends: the place of its closing quote. */
  end = 0;

  get size(): number {
    return this.#texts.length;
  }

  text(place: number): string {
    const text = this.#texts[place];
    assert(text !== undefined, 'a word that was taken');
    return text;
  }

  /**
   * Takes the word from a place up to the next quote and gives its number; -1 where it is not plain
   * (a letter beyond ASCII, an escape, a control character) or too long.
   *
   * @param bytes with a control character somewhere after the place, like the line's end
   */
  take(bytes: Uint8Array, start: number): number {
    let hash = FNV_OFFSET;
    let at = start;
    for (; ; at += 1) {
      const byte = bytes[at] ?? 0;
      if (byte === QUOTE) break;
      if (byte < 32 || byte > 126 || byte === BACKSLASH) return -1;
      hash = Math.imul(hash ^ byte, FNV_PRIME);
    }
    if (at - start > WORD_MAX) return -1;
    this.end = at;
    return this.#find(bytes, start, hash ^ (hash >>> 15));
  }

  /** Takes a word of a length that is known, whatever follows it; -1 where it is not plain. */
  takeLength(bytes: Uint8Array, start: number, length: number): number {
    let hash = FNV_OFFSET;
    this.end = start + length;
    for (let at = start; at < this.end; at += 1) {
      const byte = bytes[at] ?? 0;
      if (byte < 32 || byte > 126 || byte === QUOTE || byte === BACKSLASH) return -1;
      hash = Math.imul(hash ^ byte, FNV_PRIME);
    }
    return this.#find(bytes, start, hash ^ (hash >>> 15));
  }

  #find(bytes: Uint8Array, start: number, hash: number): number {
    const mask = this.#slots.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const place = (this.#slots[slot] ?? 0) - 1;
      if (place < 0) return this.#add(bytes, start, hash);
      if (this.#hashes[slot] === hash && this.#isAt(place, bytes, start)) return place;
    }
  }

  #isAt(place: number, bytes: Uint8Array, start: number): boolean {
    const first = this.#starts[place] ?? 0;
    const length = (this.#starts[place + 1] ?? 0) - first;
    if (length !== this.end - start) return false;
    for (let at = 0; at < length; at += 1) {
      if (this.#bytes[first + at] !== bytes[start + at]) return false;
    }
    return true;
  }

  #add(bytes: Uint8Array, start: number, hash: number): number {
    const place = this.#texts.length;
    const first = this.#starts[place] ?? 0;
    const end = first + this.end - start;
    if (end > this.#bytes.length) this.#bytes = larger(this.#bytes);
    if (place + 2 > this.#starts.length) {
      const starts = new Int32Array(this.#starts.length * 2);
      starts.set(this.#starts);
      this.#starts = starts;
    }
    const word = bytes.subarray(start, this.end);
    this.#bytes.set(word, first);
    this.#starts[place + 1] = end;
    this.#texts.push(Reflect.apply(String.fromCharCode, undefined, word));
    if (this.#texts.length * 2 > this.#slots.length) this.#grow();
    this.#put(hash, place);
    return place;
  }

  #put(hash: number, place: number): void {
    const mask = this.#slots.length - 1;
    let slot = hash & mask;
    while (this.#slots[slot] !== 0) slot = (slot + 1) & mask;
    this.#slots[slot] = place + 1;
    this.#hashes[slot] = hash;
  }

  #grow(): void {
    const slots = this.#slots;
    const hashes = this.#hashes;
    this.#slots = new Int32Array(slots.length * 4);
    this.#hashes = new Int32Array(slots.length * 4);
    for (let slot = 0; slot < slots.length; slot += 1) {
      const place = slots[slot] ?? 0;
      if (place > 0) this.#put(hashes[slot] ?? 0, place - 1);
    }
  }
}

function larger(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const more = new Uint8Array(bytes.length * 2);
  more.set(bytes);
  return more;
}
