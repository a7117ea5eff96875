import { describe, expect, it } from 'vitest';
import { papersTogether } from '../../src/paper/paper-batch.ts';
import { PaperPrinter } from '../../src/paper/paper-printer.ts';
import { otherPapers, statementOf } from '../../src/paper/test-papers.ts';
import type { Paper } from '../../src/statements/paper.ts';
import { PdfObjects } from './pdf-objects.ts';
import { againstPdfUa } from './pdf-ua.ts';

const printer = new PaperPrinter();

function pdfOf(paper: Paper): Uint8Array {
  const made = printer.print(paper, 'a4');
  if (!made.ok) throw new Error(made.refusal.detail);
  return made.value.pdf;
}

const papers = [
  statementOf('Robin Home', 8),
  statementOf('Ana Río', 8, 'es'),
  statementOf('李明', 8, 'zh-Hans'),
  statementOf('Ñandú 中村 عمر', 60),
  statementOf('Nobody', 0),
  ...otherPapers(),
];

describe('PDF/UA-1, read by qpdf', () => {
  it.each(papers.map((paper) => [paper.title, paper] as const))('holds for %s', (_, paper) => {
    expect(againstPdfUa(PdfObjects.of(pdfOf(paper)))).toEqual([]);
  });

  it('holds for statements printed together, blank pages between them', async () => {
    const cover = { title: 'Estados de cuenta', language: 'es' };
    const options = { size: 'letter', ...cover, fileName: 'all' } as const;
    const [made] = await papersTogether(papers.slice(0, 4), options);
    if (made?.ok !== true) throw new Error('not made');
    expect(againstPdfUa(PdfObjects.of(made.value.pdf))).toEqual([]);
  });
});

/** Teeth: the same PDF with one thing changed, of the same length so that offsets still fit. */
describe('a PDF that is not so', () => {
  const sound = Buffer.from(pdfOf(statementOf('Robin Home', 2))).toString('latin1');

  it.each([
    ['5', '<pdfuaid:part>1', '<pdfuaid:part>2'],
    ['6.2', '/Marked true', '/Marxed true'],
    ['7.1 suspects', '/Suspects false', '/Suspects  true'],
    ['7.1 shows', '/DisplayDocTitle true', '/DisplayDocTitlf true'],
    ['7.1 has a tag tree', '/StructTreeRoot ', '/StructTreeRoof '],
    ['7.2', '/Lang (en)', '/Lamg (en)'],
    ['7.21.7', '/ToUnicode', '/ToUnicodf'],
    ['7.21.4.1', '/FontFile2', '/FontFilf2'],
    ['7.4.2', '/S /H1', '/S /H3'],
    ['7.5 every head', '/Scope ', '/Scopf '],
    ['7.5 cells', '/S /TR', '/S /TX'],
    ['7.1 content has no tag', '/S /TD', '/X /TD'],
  ])('is found out: %s', (clause, from, to) => {
    expect(sound).toContain(from);
    const broken = Buffer.from(sound.replaceAll(from, to), 'latin1');
    expect(againstPdfUa(PdfObjects.of(broken)).join()).toContain(clause);
  });
});
