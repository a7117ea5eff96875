import fc from 'fast-check';
import { expect, it } from 'vitest';
import { WORD_MAX, WordTable } from './word-table.ts';

const encoder = new TextEncoder();
const words = fc.array(fc.stringMatching(/^[ !#-[\]-~]{0,6}$/), { maxLength: 3000 });

it('numbers words as a Map from text to number does, growing included', () => {
  const many = Array.from({ length: 5000 }, (_, place) => `word ${place % 4000}`);
  fc.assert(
    fc.property(words, (list) => {
      const table = new WordTable();
      const peer = new Map<string, number>();
      for (const word of list) {
        if (!peer.has(word)) peer.set(word, peer.size);
        const bytes = encoder.encode(`x${word}"`);
        expect(table.take(bytes, 1)).toBe(peer.get(word));
        expect(table.end).toBe(1 + word.length);
        expect(table.takeLength(bytes, 1, word.length)).toBe(peer.get(word));
        expect(table.text(peer.get(word) ?? -1)).toBe(word);
      }
      expect(table.size).toBe(peer.size);
    }),
    { numRuns: 30, examples: [[many]] },
  );
});

it.each([
  ['a control character', 'ab\n"'],
  ['an escape', 'a\\u0062"'],
  ['a letter beyond ASCII', 'é"'],
  ['more than a word', `${'x'.repeat(WORD_MAX + 1)}"`],
])('takes no %s', (_what, text) => {
  expect(new WordTable().take(encoder.encode(text), 0)).toBe(-1);
});
