import { describe, expect, it } from 'vitest';
import type { Paper } from '../statements/paper.ts';
import { paperPdf } from './paper-pdf.ts';
import { PaperPrinter, type PaperSize, type PrintedPaper } from './paper-printer.ts';
import { infoOfPdf, otherPapers, statementOf, tagsOfPdf, textOfPdf } from './test-papers.ts';

async function printed(paper: Paper, size: PaperSize = 'a4'): Promise<PrintedPaper> {
  const made = await paperPdf(paper, { size });
  if (!made.ok) throw new Error(made.refusal.detail);
  return made.value;
}

/**
 * Marks that ISO 14289-1 (PDF/UA-1) asks for and that can be read without its own checker: part 1
 * in the metadata (clause 5), Marked (6.2), a document language (7.2), the title shown (7.1). The
 * typesetter's own PDF/UA-1 check passed before there were any bytes.
 */
function expectMarkedUa1(pdf: Uint8Array): void {
  const raw = Buffer.from(pdf).toString('latin1');
  expect(raw).toContain('<pdfuaid:part>1</pdfuaid:part>');
  expect(raw).toMatch(/\/MarkInfo\s*<<\s*\/Marked true/);
  expect(raw).toMatch(/\/Lang \(en/);
  expect(raw).toContain('/DisplayDocTitle true');
  expect(raw).toContain('/ToUnicode');
}

describe('every paper as PDF', () => {
  it.each(['a4', 'letter'] as const)('is marked PDF/UA-1 and one page on %s', async (size) => {
    for (const paper of [statementOf('Robin Home', 8), ...otherPapers()]) {
      const { pdf, pages, replaced } = await printed(paper, size);
      expectMarkedUa1(pdf);
      expect([paper.fileName, pages, replaced]).toEqual([paper.fileName, 1, []]);
      const info = infoOfPdf(pdf);
      expect(info).toMatch(/Tagged: +yes/);
      expect(info).toContain(size === 'a4' ? '(A4)' : '(letter)');
      expect(textOfPdf(pdf)).toContain(paper.title);
    }
  });

  it('has a tag tree: a heading, table heads with scope, rows, cells and sums', async () => {
    const tags = tagsOfPdf((await printed(statementOf('Robin Home', 3))).pdf);
    for (const tag of ['H1', 'H2', 'Table', 'THead', 'TH', '/Scope /Column', 'TBody', 'TD']) {
      expect(tags).toContain(tag);
    }
    const [slip] = otherPapers();
    if (slip !== undefined) expect(tagsOfPdf((await printed(slip)).pdf)).toContain('TFoot');
  });

  it('is the same bytes each time it is made', () => {
    const paper = statementOf('Robin Home', 5);
    const first = new PaperPrinter().print(paper, 'a4');
    const second = new PaperPrinter().print(paper, 'a4');
    expect(first).toEqual(second);
  });
});

describe('a statement as PDF', () => {
  it.each(['a4', 'letter'] as const)('is one page for 25 lines on %s', async (size) => {
    expect((await printed(statementOf('Robin Home', 25), size)).pages).toBe(1);
  });

  it('cuts no row over two pages', async () => {
    const paper = statementOf('Robin Home', 1);
    const row = (at: number) => `begin${at}x ${'some more words '.repeat(90)} end${at}x`;
    const columns = [{ head: 'What happened', shows: 'text' }] as const;
    const rows = Array.from({ length: 60 }, (_, at) => [row(at)]);
    const long: Paper = { ...paper, blocks: [{ block: 'table', columns, rows }] };
    const pages = textOfPdf((await printed(long)).pdf).split('\f');
    expect(pages.length).toBeGreaterThan(3);
    for (const [at] of rows.entries()) {
      const page = pages.findIndex((text) => text.includes(`begin${at}x`));
      expect(pages[page]).toContain(`end${at}x`);
    }
  });

  it('repeats the head and counts pages where it is longer', async () => {
    const { pdf, pages } = await printed(statementOf('Robin Home', 120));
    const byPage = textOfPdf(pdf).split('\f').slice(0, pages);
    expect(pages).toBeGreaterThan(2);
    for (const [at, text] of byPage.entries()) {
      expect(text).toContain('What happened');
      expect(text).toContain(`Page ${at + 1} of ${pages}`);
    }
  });

  it('gives back names in any script as selectable text', async () => {
    const { pdf, replaced } = await printed(statementOf('Ñandú Kő 中村 Жанна Ωμέγα', 2));
    expect(textOfPdf(pdf)).toContain('Ñandú Kő 中村 Жанна Ωμέγα');
    expect(replaced).toEqual([]);
    expect(textOfPdf((await printed(statementOf('عمر', 2))).pdf)).toContain('عمر');
    expect(textOfPdf((await printed(statementOf('שלום', 2))).pdf)).toContain('שלום');
    expect(textOfPdf((await printed(statementOf('नेहा', 2))).pdf)).toContain('न');
  });

  it.each([
    '#include "x"',
    '*bold* _it_ = head',
    '$x$ @ref <label>',
    '\\u{202e} #panic()',
    '<script>alert(1)</script>',
    '#read("/etc/passwd")',
    '{{7*7}} // /* */',
  ])('takes the name %s for a name', async (name) => {
    expect(textOfPdf((await printed(statementOf(name, 1))).pdf)).toContain(`Statement for ${name}`);
  });

  it('prints a box for a character that no font has, and says which', async () => {
    const { pdf, replaced } = await printed(statementOf('Sam 😀', 1));
    expect(replaced).toEqual(['😀']);
    expect(textOfPdf(pdf)).toContain('Sam □');
    expectMarkedUa1(pdf);
  });
});

describe('a statement in the language that the family reads', () => {
  it.each([
    ['es', '/Lang (es)', /Llevadas \d+, devueltas 0, pagado \$25\.00, por pagar \$/],
    ['zh-Hans', '/Lang (zh-CN)', /领走 \d+，退回 0，已付 \$25\.00，待付 \$/],
    ['fr', '/Lang (en)', /Taken \d+, brought back 0, paid \$25\.00, still to pay \$/],
  ])('%s: words, and the tag that a screen reader goes by', async (language, tag, sentence) => {
    const made = await paperPdf(statementOf('Ana Río', 3, language), { size: 'a4' });
    if (!made.ok) throw new Error(made.refusal.detail);
    expect(made.value.replaced).toEqual([]);
    expect(Buffer.from(made.value.pdf).toString('latin1')).toContain(tag);
    expect(textOfPdf(made.value.pdf).replace(/\s+/g, ' ')).toMatch(sentence);
  });
});
