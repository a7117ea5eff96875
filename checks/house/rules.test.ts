import { describe, expect, test } from 'vitest';
import { houseRules } from './rules.ts';
import { isScript, sourceFiles } from './source-file.ts';

const files = sourceFiles();

describe('house rules', () => {
  test('look at the whole house', () => {
    expect(files.filter(isScript).length).toBeGreaterThan(150);
    const paths = files.map((file) => file.path);
    expect(paths).toEqual(
      expect.arrayContaining(['cratebook', 'vite.config.ts', 'src/ledger/ledger.ts']),
    );
  });

  test.each(houseRules)('$name', ({ appliesTo, find }) => {
    const looked = files.filter(appliesTo);
    expect(looked.length).toBeGreaterThan(0);
    const found = looked.flatMap((file) => find(file).map((finding) => `${file.path}:${finding}`));
    expect(found).toEqual([]);
  });

  test.each(houseRules)('$name: finds it in a bad sample', ({ appliesTo, find, bad }) => {
    for (const sample of bad) {
      expect(appliesTo(sample), sample.path).toBe(true);
      expect(find(sample), sample.text.slice(0, 60)).not.toEqual([]);
    }
  });
});
