import { BYTE, type LineBytes } from './line-bytes.ts';
import { ENTRIES_MAX, type Part } from './part.ts';
import type { TapeReader } from './tape.ts';
import type { WordTest } from './text-parts.ts';
import { passWhole } from './whole-parts.ts';

/** Stands on the tape in place of a shape's number where the keys follow one by one. */
const NO_SHAPE = -1;

/**
 * Whole numbers by keys of the group's own, like `lines`. On the tape stand the number of the set
 * of keys and the numbers, in the order of the keys' words, which also finds a key that is there
 * twice.
 */
export class WholesPart implements Part {
  readonly isLeftOut = false;
  readonly #line: LineBytes;
  readonly #test: WordTest;
  readonly #least: number;
  /** True where one record has several of it, so that no object is used again. */
  readonly #isInside: boolean;
  readonly #keys = new Int32Array(ENTRIES_MAX);
  readonly #wholes = new Int32Array(ENTRIES_MAX);
  /** One object for each set of keys, filled anew for each record. */
  readonly #objects: Record<string, number>[] = [];

  constructor(line: LineBytes, test: WordTest, least: number, isInside: boolean) {
    this.#line = line;
    this.#test = test;
    this.#least = least;
    this.#isInside = isInside;
  }

  look(line: LineBytes): boolean {
    if (!line.pass(BYTE.start)) return false;
    let count = 0;
    while (line.bytes[line.at] !== BYTE.end) {
      if (count > 0 && !line.pass(BYTE.comma)) return false;
      if (count === ENTRIES_MAX || !this.#entry(line, count)) return false;
      count += 1;
    }
    line.at += 1;
    this.#put(line, count);
    return true;
  }

  value(from: TapeReader): Record<string, number> {
    const shape = from.next();
    if (shape === NO_SHAPE) {
      const { words } = this.#line;
      const keys = Array.from({ length: from.next() }, () => words.text(from.next()));
      return filled({}, keys, from);
    }
    const known = this.#isInside ? undefined : this.#objects[shape];
    const object = known ?? {};
    if (known === undefined && !this.#isInside) this.#objects[shape] = object;
    return filled(object, this.#line.shapes.keysOf(shape), from);
  }

  /** Takes one key with its number into the order of the keys; false where it is there already. */
  #entry(line: LineBytes, count: number): boolean {
    const key = line.word();
    if (key < 0 || !this.#test.passes(key, line.words) || !line.pass(BYTE.colon)) return false;
    const whole = passWhole(line);
    if (whole < this.#least) return false;
    const keys = this.#keys;
    const wholes = this.#wholes;
    let at = count;
    for (; at > 0 && (keys[at - 1] ?? 0) >= key; at -= 1) {
      if (keys[at - 1] === key) return false;
      keys[at] = keys[at - 1] ?? 0;
      wholes[at] = wholes[at - 1] ?? 0;
    }
    keys[at] = key;
    wholes[at] = whole;
    return true;
  }

  #put({ tape, shapes }: LineBytes, count: number): void {
    const shape = shapes.take(this.#keys, count);
    tape.put(shape);
    if (shape === NO_SHAPE) {
      tape.put(count);
      for (let at = 0; at < count; at += 1) tape.put(this.#keys[at] ?? 0);
    }
    for (let at = 0; at < count; at += 1) tape.put(this.#wholes[at] ?? 0);
  }
}

function filled(
  object: Record<string, number>,
  keys: readonly string[],
  from: TapeReader,
): Record<string, number> {
  for (let at = 0; at < keys.length; at += 1) object[keys[at] ?? ''] = from.next();
  return object;
}
