import type { WordTable } from '../../base/word-table.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import { ENTRIES_MAX, type Part } from './part.ts';
import type { TapeReader } from './tape.ts';
import type { WordTest } from './text-parts.ts';

/** Parts with parts inside: a list, and objects whose keys are the group's own. */

export class ListPart implements Part {
  readonly isLeftOut: boolean;
  readonly #each: Part;

  constructor(each: Part) {
    this.isLeftOut = each.isLeftOut;
    this.#each = each;
  }

  look(line: LineBytes): boolean {
    if (!line.pass(BYTE.listStart)) return false;
    const { tape } = line;
    const countAt = tape.top;
    if (!this.isLeftOut) tape.put(0);
    let count = 0;
    while (line.bytes[line.at] !== BYTE.listEnd) {
      if (count > 0 && !line.pass(BYTE.comma)) return false;
      if (count === ENTRIES_MAX || !this.#each.look(line)) return false;
      count += 1;
    }
    line.at += 1;
    if (!this.isLeftOut) tape.set(countAt, count);
    return true;
  }

  value(from: TapeReader): unknown[] {
    const list: unknown[] = [];
    for (let left = from.next(); left > 0; left -= 1) list.push(this.#each.value(from));
    return list;
  }
}

/** A list of just these parts, of which nothing is kept. */
export class TextsPart implements Part {
  readonly isLeftOut = true;
  readonly #parts: readonly Part[];

  constructor(parts: readonly Part[]) {
    this.#parts = parts;
  }

  look(line: LineBytes): boolean {
    for (let at = 0; at < this.#parts.length; at += 1) {
      if (!line.pass(at === 0 ? BYTE.listStart : BYTE.comma)) return false;
      if (this.#parts[at]?.look(line) !== true) return false;
    }
    return line.pass(BYTE.listEnd);
  }

  value(): undefined {
    return undefined;
  }
}

/** Objects like {"ada":{"honey":3}}: keys of the group's own, each with a part of its own. */
export class MapPart implements Part {
  readonly isLeftOut = false;
  readonly #test: WordTest;
  readonly #each: Part;
  readonly #words: WordTable;
  readonly #keys = new Int32Array(ENTRIES_MAX);

  constructor(test: WordTest, each: Part, words: WordTable) {
    this.#test = test;
    this.#each = each;
    this.#words = words;
  }

  look(line: LineBytes): boolean {
    if (!line.pass(BYTE.start)) return false;
    const { tape } = line;
    const countAt = tape.top;
    tape.put(0);
    let count = 0;
    while (line.bytes[line.at] !== BYTE.end) {
      if (count > 0 && !line.pass(BYTE.comma)) return false;
      if (count === ENTRIES_MAX || !this.#entry(line, count)) return false;
      count += 1;
    }
    line.at += 1;
    tape.set(countAt, count);
    return true;
  }

  value(from: TapeReader): Record<string, unknown> {
    // Without a prototype an object takes any keys at once; others gain them one shape a key.
    const map: Record<string, unknown> = Object.create(null);
    for (let left = from.next(); left > 0; left -= 1) {
      const key = this.#words.text(from.next());
      map[key] = this.#each.value(from);
    }
    return map;
  }

  #entry(line: LineBytes, count: number): boolean {
    const key = line.word();
    if (key < 0 || !this.#test.passes(key, line.words)) return false;
    if (holds(this.#keys, count, key)) return false;
    this.#keys[count] = key;
    line.tape.put(key);
    return line.pass(BYTE.colon) && this.#each.look(line);
  }
}

function holds(keys: Int32Array, count: number, key: number): boolean {
  for (let at = 0; at < count; at += 1) if (keys[at] === key) return true;
  return false;
}
