import { describe, expect, it } from 'vitest';
import { type Finding, findingLine } from '../../src/intake/finding.ts';
import { readBook } from '../../src/intake/read-book.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { acceptBook } from '../../src/rules/accept-book.ts';
import { checkBook } from '../../src/rules/check-book.ts';
import { brokenBooks } from './broken-books.ts';
import type { BrokenFile } from './broken-file.ts';
import { textOf } from './broken-file.ts';
import { brokenValues } from './broken-values.ts';
import { goodBook } from './good-book.ts';

const brokenFiles: readonly BrokenFile[] = [...brokenValues, ...brokenBooks];

function errorsOf(file: BrokenFile): readonly Finding[] {
  const accepted = acceptBook(readBook(file.bytes()));
  return accepted.ok ? [] : accepted.refusal;
}

describe('the good book, from which each broken file differs in one thing', () => {
  it('has nothing wrong', () => {
    const read = readBook(textOf(goodBook));
    expect(read.findings).toEqual([]);
    const ledger = Ledger.ofDistinct(read.records, read.places);
    expect(checkBook({ ledger, records: read.records, lines: read.lines }).inOrder()).toEqual([]);
  });
});

describe('broken book files', () => {
  it('are at least 200, each another one', () => {
    const names = new Set(
      brokenFiles.map(({ group, name, field }) => `${group}: ${name} ${field}`),
    );
    expect(names.size).toBe(brokenFiles.length);
    expect(brokenFiles.length).toBeGreaterThanOrEqual(200);
  });

  it.each(brokenFiles.map((file) => [`${file.group}: ${file.name}`, file] as const))(
    '%s',
    (_name, file) => {
      const errors = errorsOf(file);
      expect(errors.map(({ line, field }) => ({ line, field }))).toEqual([
        { line: file.line, field: file.field },
      ]);
      const [error] = errors;
      const line = error === undefined ? '' : findingLine(error, 'book.jsonl');
      expect(line).toMatch(/^book\.jsonl, line \d+.*: said .+, wanted .+$/u);
      expect(line).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}]/u);
      expect(line).not.toContain('1111');
      expect(line.length).toBeLessThan(400);
    },
  );
});
