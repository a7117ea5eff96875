import type { WordTable } from '../../base/word-table.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import type { Part } from './part.ts';
import type { ShapeTable } from './shape-table.ts';
import type { WordTest } from './text-parts.ts';
import { passWhole } from './whole-parts.ts';

/** Parts with parts inside: a list, and objects whose keys are the group's own. */

/** Longer lists and objects are read the slow way. */
const ENTRIES_MAX = 64;
/** Stands on the tape in place of a shape's number where the keys follow one by one. */
const NO_SHAPE = -1;

export function listPart(each: Part): Part {
  return {
    isLeftOut: each.isLeftOut,
    look: (line) => {
      if (!line.pass(BYTE.listStart)) return false;
      const { tape } = line;
      const countAt = tape.top;
      if (!each.isLeftOut) tape.put(0);
      let count = 0;
      while (line.bytes[line.at] !== BYTE.listEnd) {
        if (count > 0 && !line.pass(BYTE.comma)) return false;
        if (count === ENTRIES_MAX || !each.look(line)) return false;
        count += 1;
      }
      line.at += 1;
      if (!each.isLeftOut) tape.set(countAt, count);
      return true;
    },
    value: (from) => {
      const list: unknown[] = [];
      for (let left = from.next(); left > 0; left -= 1) list.push(each.value(from));
      return list;
    },
  };
}

/** A list of just these parts, of which nothing is kept. */
export function textsPart(parts: readonly Part[]): Part {
  const look = (line: LineBytes): boolean => {
    for (const [index, part] of parts.entries()) {
      if (!line.pass(index === 0 ? BYTE.listStart : BYTE.comma) || !part.look(line)) return false;
    }
    return line.pass(BYTE.listEnd);
  };
  return { isLeftOut: true, look, value: () => undefined };
}

/** Objects like {"ada":{"honey":3}}: keys of the group's own, each with a part of its own. */
export function mapPart(test: WordTest, each: Part, words: WordTable): Part {
  const keys = new Int32Array(ENTRIES_MAX);
  return {
    isLeftOut: false,
    look: (line) => {
      if (!line.pass(BYTE.start)) return false;
      const { tape } = line;
      const countAt = tape.top;
      tape.put(0);
      let count = 0;
      while (line.bytes[line.at] !== BYTE.end) {
        if (count > 0 && !line.pass(BYTE.comma)) return false;
        const key = line.word();
        if (key < 0 || count === ENTRIES_MAX || !test.passes(key, line.words)) return false;
        if (holds(keys, count, key)) return false;
        keys[count] = key;
        count += 1;
        tape.put(key);
        if (!line.pass(BYTE.colon) || !each.look(line)) return false;
      }
      line.at += 1;
      tape.set(countAt, count);
      return true;
    },
    value: (from) => {
      const map: Record<string, unknown> = {};
      for (let left = from.next(); left > 0; left -= 1) {
        const key = words.text(from.next());
        map[key] = each.value(from);
      }
      return map;
    },
  };
}

/**
 * Whole numbers by keys of the group's own, like `lines`. Keys are kept in the order of their
 * words, which finds a key that is there twice.
 *
 * @param isInside true where one record has several of it, so that no object is used again
 */
export function wholesPart(
  test: WordTest,
  least: number,
  words: WordTable,
  shapes: ShapeTable,
  isInside: boolean,
): Part {
  const keys = new Int32Array(ENTRIES_MAX);
  const wholes = new Int32Array(ENTRIES_MAX);
  const objects: Record<string, number>[] = [];
  return {
    isLeftOut: false,
    look: (line) => {
      if (!line.pass(BYTE.start)) return false;
      let count = 0;
      while (line.bytes[line.at] !== BYTE.end) {
        if (count > 0 && !line.pass(BYTE.comma)) return false;
        const key = line.word();
        if (key < 0 || count === ENTRIES_MAX || !test.passes(key, line.words)) return false;
        if (!line.pass(BYTE.colon)) return false;
        const whole = passWhole(line);
        if (whole < least) return false;
        let at = count;
        for (; at > 0 && (keys[at - 1] ?? 0) >= key; at -= 1) {
          if (keys[at - 1] === key) return false;
          keys[at] = keys[at - 1] ?? 0;
          wholes[at] = wholes[at - 1] ?? 0;
        }
        keys[at] = key;
        wholes[at] = whole;
        count += 1;
      }
      line.at += 1;
      const { tape } = line;
      const shape = shapes.take(keys, count);
      tape.put(shape);
      if (shape === NO_SHAPE) {
        tape.put(count);
        for (let at = 0; at < count; at += 1) tape.put(keys[at] ?? 0);
      }
      for (let at = 0; at < count; at += 1) tape.put(wholes[at] ?? 0);
      return true;
    },
    value: (from) => {
      const shape = from.next();
      if (shape === NO_SHAPE) {
        const own = Array.from({ length: from.next() }, () => words.text(from.next()));
        return filled({}, own, from);
      }
      const known = isInside ? undefined : objects[shape];
      const object = known ?? {};
      if (known === undefined && !isInside) objects[shape] = object;
      return filled(object, shapes.keysOf(shape), from);
    },
  };
}

function holds(keys: Int32Array, count: number, key: number): boolean {
  for (let at = 0; at < count; at += 1) if (keys[at] === key) return true;
  return false;
}

function filled(
  object: Record<string, number>,
  keys: readonly string[],
  from: { next(): number },
): Record<string, number> {
  for (let at = 0; at < keys.length; at += 1) object[keys[at] ?? ''] = from.next();
  return object;
}
