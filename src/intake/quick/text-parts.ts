import { readUuid, UUID_LENGTH } from '../../base/uuid-bytes.ts';
import type { WordTable } from '../../base/word-table.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import type { Part } from './part.ts';
import type { TapeReader } from './tape.ts';

/** So many digits, and text may hold a payment card number; fewer cannot. */
const CARD_DIGITS_MIN = 13;

/** Remembers which words pass a test, so that each is tested once in a book. */
export class WordTest {
  readonly #passes: (text: string) => boolean;
  /** By word: 1 passes, 2 does not, 0 not yet tested. */
  #known = new Uint8Array(1024);

  constructor(passes: (text: string) => boolean) {
    this.#passes = passes;
  }

  passes(word: number, words: WordTable): boolean {
    const known = this.#known[word] ?? 0;
    return known === 0 ? this.#test(word, words) : known === 1;
  }

  #test(word: number, words: WordTable): boolean {
    if (word >= this.#known.length) {
      const known = new Uint8Array(word * 2);
      known.set(this.#known);
      this.#known = known;
    }
    const passes = this.#passes(words.text(word));
    this.#known[word] = passes ? 1 : 2;
    return passes;
  }
}

/** One of a few words, or text with a pattern: kept as the number of its word. */
export class WordPart implements Part {
  readonly isLeftOut = false;
  readonly #test: WordTest;
  readonly #words: WordTable;

  constructor(test: WordTest, words: WordTable) {
    this.#test = test;
    this.#words = words;
  }

  look(line: LineBytes): boolean {
    const word = line.word();
    if (word < 0 || !this.#test.passes(word, line.words)) return false;
    line.tape.put(word);
    return true;
  }

  value(from: TapeReader): string {
    return this.#words.text(from.next());
  }
}

/** Free text without escapes that surely holds no card number. */
export class TextPart implements Part {
  readonly isLeftOut = true;
  readonly #least: number;
  readonly #most: number;

  constructor(least: number, most: number) {
    this.#least = least;
    this.#most = most;
  }

  look(line: LineBytes): boolean {
    const { bytes, at: start } = line;
    if (bytes[start] !== BYTE.quote) return false;
    let digits = 0;
    let isPlain = true;
    let at = start + 1;
    for (; ; at += 1) {
      const byte = bytes[at] ?? 0;
      if (byte === BYTE.quote) break;
      if (byte < 32 || byte === BYTE.backslash) return false;
      if (byte > 126) isPlain = false;
      if (byte >= BYTE.zero && byte <= BYTE.nine) digits += 1;
    }
    const length = isPlain ? at - start - 1 : lengthOf(bytes.subarray(start + 1, at));
    line.at = at + 1;
    return digits < CARD_DIGITS_MIN && length >= this.#least && length <= this.#most;
  }

  value(): undefined {
    return undefined;
  }
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** The length of text beyond ASCII; NaN, which is no length, where it is not UTF-8. */
function lengthOf(bytes: Uint8Array): number {
  try {
    return strict.decode(bytes).length;
  } catch {
    return Number.NaN;
  }
}

/** The id of another record, one of a list. */
export class RecordIdPart implements Part {
  readonly isLeftOut = true;
  readonly #words = new Int32Array(4);

  look(line: LineBytes): boolean {
    return passUuid(line, this.#words);
  }

  value(): undefined {
    return undefined;
  }
}

/** Goes past an id in quotes; false where there is none. */
export function passUuid(line: LineBytes, into: Int32Array): boolean {
  const { bytes, at } = line;
  const isQuoted = bytes[at] === BYTE.quote && bytes[at + UUID_LENGTH + 1] === BYTE.quote;
  if (!isQuoted || !readUuid(bytes, at + 1, into)) return false;
  line.at = at + UUID_LENGTH + 2;
  return true;
}
