import type { WordTable } from '../../base/word-table.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import { ENTRIES_MAX, type Part } from './part.ts';
import type { WordTest } from './text-parts.ts';

/** Parts with parts inside: a list, and objects whose keys are the group's own. */

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

function holds(keys: Int32Array, count: number, key: number): boolean {
  for (let at = 0; at < count; at += 1) if (keys[at] === key) return true;
  return false;
}
