import { assert } from './assert.ts';

/** Longer text is no word: ids, days and names of accounts are shorter. */
export const WORD_MAX = 96;

const SLOTS_FIRST = 1024;
const QUOTE = 34;
const BACKSLASH = 92;
const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/** The words of a table as plain data that can go from one thread to another. */
export interface WordData {
  /** All words, one after the other. */
  readonly bytes: Uint8Array;
  /** Where each begins, and at the end where the last one ends. */
  readonly starts: Int32Array;
}

/**
 * Gives each word that stands in a file's bytes a number, from 0, and keeps one string of it. The
 * few words of a book (ids, days, kinds) come again on every line; finding their number takes no
 * new string (open addressing with linear probing; hash: FNV-1a).
 */
export class WordTable {
  /** Each is made when it is first asked for. */
  #texts: (string | undefined)[] = [];
  /** The bytes of all words, one after the other, and where each begins. */
  #bytes: Uint8Array = new Uint8Array(SLOTS_FIRST * 16);
  #starts: Int32Array = new Int32Array(SLOTS_FIRST);
  /** Place + 1 by slot; 0 is an empty slot. The length is a power of two. */
  #slots = new Int32Array(SLOTS_FIRST);
  #hashes = new Int32Array(SLOTS_FIRST);
  /** Where the word that was taken last ends: the place of its closing quote. */
  end = 0;

  get size(): number {
    return this.#texts.length;
  }

  /** A table of words that another one has taken, to ask for them and not to take more. */
  static over({ bytes, starts }: WordData): WordTable {
    const table = new WordTable();
    table.#bytes = bytes;
    table.#starts = starts;
    table.#texts = Array.from({ length: starts.length - 1 }, () => undefined);
    return table;
  }

  get data(): WordData {
    const starts = this.#starts.subarray(0, this.size + 1);
    return { bytes: this.#bytes.subarray(0, starts[this.size]), starts };
  }

  text(place: number): string {
    return this.#texts[place] ?? this.#made(place);
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

  #made(place: number): string {
    assert(place >= 0 && place < this.size, 'a word that was taken');
    const word = this.#bytes.subarray(this.#starts[place], this.#starts[place + 1]);
    const text = String.fromCharCode(...word);
    this.#texts[place] = text;
    return text;
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
    this.#bytes.set(bytes.subarray(start, this.end), first);
    this.#starts[place + 1] = end;
    this.#texts.push(undefined);
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
