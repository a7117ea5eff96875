import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { countsOf } from './ratchet.ts';
import { sourceFile, sourceFiles } from './source-file.ts';

/** After a count went down: `node tools/turn-ratchet.ts` writes the new, lower one. */
test('no count of ratchet.json has grown', () => {
  const most = JSON.parse(readFileSync(join(import.meta.dirname, 'ratchet.json'), 'utf8'));
  const now = countsOf(sourceFiles());
  expect(Object.keys(most)).toEqual(Object.keys(now));
  const grown = Object.entries(now).filter(([name, count]) => count > most[name]);
  expect(grown).toEqual([]);
});

test('the counts see what they are for', () => {
  const text = [
    'const a = b as string;',
    "const c = ['x'] as const;",
    'export function f() {',
    '  // biome-ignore lint/x: y',
    "  if (a!) throw new Error('x');",
    ...Array(40).fill('  g();'),
    '}',
  ].join('\n');
  const counts = countsOf([sourceFile('src/a.ts', text), sourceFile('src/a.test.ts', text)]);
  expect(counts).toEqual({
    longestFunctionLines: 44,
    longestFileLines: 45,
    functionsOver40Lines: 1,
    casts: 1,
    throws: 1,
    nonNullAssertions: 1,
    lintExceptions: 1,
  });
});
