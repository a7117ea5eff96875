import fc from 'fast-check';
import { expect, it } from 'vitest';
import { IdTable } from './id-table.ts';

it('does what a Map from id to place does, growing included', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ maxLength: 3 }), { maxLength: 5000 }), (ids) => {
      const table = new IdTable();
      const peer = new Map<string, number>();
      for (const id of ids) {
        expect(table.add(id)).toBe(peer.has(id) ? undefined : peer.size);
        if (!peer.has(id)) peer.set(id, peer.size);
      }
      for (const id of [...ids, 'never added']) expect(table.placeOf(id)).toBe(peer.get(id));
      expect(table.size).toBe(peer.size);
    }),
    { numRuns: 30, examples: [[Array.from({ length: 3000 }, (_, place) => `id${place % 2900}`)]] },
  );
});
