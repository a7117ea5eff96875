import { describe, expect, it } from 'vitest';
import { type Finding, findingLine } from '../../src/intake/finding.ts';
import { readBook } from '../../src/intake/read-book.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { acceptBook } from '../../src/rules/accept-book.ts';
import { checkBook } from '../../src/rules/check-book.ts';
import { brokenBooks } from './broken-books.ts';
import { type BrokenFile, textOf } from './broken-file.ts';
import { brokenValues } from './broken-values.ts';
import { goodBook } from './good-book.ts';
import { listOfFiles } from './list-of-files.ts';
import { toldFiles } from './told-files.ts';

const brokenFiles: readonly BrokenFile[] = [...brokenValues, ...brokenBooks];
const answers = new Map<BrokenFile, readonly Finding[]>();

/** Every error and every warning of a file. */
function findingsOf(file: BrokenFile): readonly Finding[] {
  const known = answers.get(file);
  if (known !== undefined) return known;
  const read = readBook(file.bytes());
  const accepted = acceptBook(read);
  const found = accepted.ok
    ? [
        ...read.findings,
        ...checkBook({
          ledger: accepted.value.ledger,
          records: read.records,
          lines: read.lines,
        }).inOrder(),
      ]
    : accepted.refusal;
  answers.set(file, found);
  return found;
}

function expectOneClearLine(file: BrokenFile, severity: Finding['severity']): void {
  const [finding, ...others] = findingsOf(file);
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ line: file.line, field: file.field, severity });
  const line = finding === undefined ? '' : findingLine(finding, 'book.jsonl');
  expect(line).toMatch(/^book\.jsonl, line \d+.*: said .+, wanted .+$/u);
  expect(line).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}]/u);
  expect(line).not.toMatch(/1111|378282/);
  expect(line.length).toBeLessThan(400);
}

function named(files: readonly BrokenFile[]) {
  return files.map((file) => [`${file.group}: ${file.name}`, file] as const);
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

  it.each(named(brokenFiles))('%s', (_name, file) => expectOneClearLine(file, 'error'));
});

describe('files that are told about and not refused', () => {
  it.each(named(toldFiles))('%s', (_name, file) => expectOneClearLine(file, 'warning'));
});

it('all of them are listed on a page', async () => {
  const all = [...brokenFiles, ...toldFiles];
  const list = listOfFiles(new Map(all.map((file) => [file, findingsOf(file)])));
  await expect(list).toMatchFileSnapshot('../../docs/broken-files.md');
});
