import fc from 'fast-check';
import { expect, it } from 'vitest';
import { uuid7 } from './id.ts';
import { readUuid, readUuidText, uuidText } from './uuid-bytes.ts';
import { UuidTable } from './uuid-table.ts';

const ids = fc
  .record({ ms: fc.nat(2 ** 31), random: fc.uint8Array({ minLength: 10, maxLength: 10 }) })
  .map(({ ms, random }) => uuid7(ms * 1000, random));

it('reads an id from bytes and from text, and gives the text back', () => {
  fc.assert(
    fc.property(ids, (id) => {
      const [fromBytes, fromText] = [new Int32Array(4), new Int32Array(4)];
      expect(readUuid(new TextEncoder().encode(`"${id}"`), 1, fromBytes)).toBe(true);
      expect(readUuidText(id, fromText)).toBe(true);
      expect(fromText).toEqual(fromBytes);
      const [a = 0, b = 0, c = 0, d = 0] = fromText;
      expect(uuidText(a, b, c, d)).toBe(id);
    }),
  );
});

const GOOD = '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10';

it.each([
  ['in upper case', GOOD.toUpperCase()],
  ['of another version', GOOD.replace('-7c3e', '-4c3e')],
  ['of another variant', GOOD.replace('-9a41', '-ca41')],
  ['without a dash', GOOD.replace('2-7', '207')],
  ['that is too short', GOOD.slice(1)],
  ['with a letter beyond ASCII', GOOD.replace('1f0c', '1f0č')],
])('reads no id %s', (_what, text) => {
  expect(readUuidText(text, new Int32Array(4))).toBe(false);
});

it('does what a Map from id to place does, growing included', () => {
  const part = fc.integer({ min: -2, max: 2 });
  const list = fc.array(fc.tuple(part, part, part, part), { maxLength: 600 });
  const many = Array.from({ length: 9000 }, (_, place) => [1, 2, place % 7000, 4] as const);
  fc.assert(
    fc.property(list, (each) => {
      const table = new UuidTable();
      const peer = new Map<string, number>();
      for (const id of each) {
        expect(table.add(...id)).toBe(!peer.has(id.join()));
        if (!peer.has(id.join())) peer.set(id.join(), peer.size);
      }
      for (const id of each) expect(table.placeOf(...id)).toBe(peer.get(id.join()));
      expect(table.placeOf(9, 9, 9, 9)).toBe(-1);
    }),
    { numRuns: 30, examples: [[many.map(([a, b, c, d]) => [a, b, c, d])]] },
  );
});

it('is handed on as plain data, and says whether another table has an id of it', () => {
  const word = fc.integer({ min: -3, max: 3 });
  const lists = fc.array(fc.tuple(word, word), { maxLength: 40 });
  fc.assert(
    fc.property(lists, lists, (own, others) => {
      const [table, other] = [new UuidTable(), new UuidTable()];
      for (const [a, d] of own) table.add(a, 0, 1, d);
      for (const [a, d] of others) other.add(a, 0, 1, d);
      const over = UuidTable.over(structuredClone(table.data));
      expect(over.size).toBe(table.size);
      for (const [a, d] of [...own, ...others]) {
        expect(over.placeOf(a, 0, 1, d)).toBe(table.placeOf(a, 0, 1, d));
        expect(over.placeIn(Int32Array.of(9, a, 0, 1, d), 1)).toBe(table.placeOf(a, 0, 1, d));
      }
      const known = new Set(own.map((id) => id.join()));
      expect(over.hasNoneOf(other.data)).toBe(!others.some((id) => known.has(id.join())));
    }),
    { numRuns: 200 },
  );
});
