import { describe, expect, it } from 'vitest';
import { paperPdfs, papersTogether, TOGETHER_MAX } from './paper-batch.ts';
import { PaperPrinter } from './paper-printer.ts';
import { infoOfPdf, otherPapers, statementOf, tagsOfPdf, textOfPdf } from './test-papers.ts';

const many = Array.from({ length: 40 }, (_, at) => statementOf(`Family ${at}`, 1 + (at % 4)));

describe('many papers at once', () => {
  it.each([3, 40])(
    'makes each of %i once, the same as one by one, and counts them',
    async (count) => {
      const papers = many.slice(0, count);
      const made = new Map<string, unknown>();
      const counted: number[] = [];
      await paperPdfs(papers, {
        size: 'letter',
        each: (paper, printed, done) => {
          made.set(paper.title, printed.ok && Buffer.from(printed.value.pdf).toString('base64'));
          counted.push(done);
        },
      });
      expect(counted).toEqual(papers.map((_, at) => at + 1));
      const printer = new PaperPrinter();
      for (const paper of papers) {
        const alone = printer.print(paper, 'letter');
        const bytes = alone.ok && Buffer.from(alone.value.pdf).toString('base64');
        expect(made.get(paper.title) === bytes).toBe(true);
      }
    },
  );

  it('are one tagged PDF together, each from an odd page, in the order given', async () => {
    const papers = [statementOf('First', 3), statementOf('Second', 70), statementOf('Third', 2)];
    const title = 'Statements';
    const [made, ...more] = await papersTogether(papers, {
      size: 'a4',
      title,
      language: 'en',
      fileName: 'all',
    });
    if (made?.ok !== true) throw new Error('not made');
    const { pdf, pages } = made.value;
    expect([pages, more]).toEqual([5, []]);
    const text = textOfPdf(pdf).split('\f');
    expect(text[0]).toContain('Statement for First');
    expect(text[0]).toContain('Page 1 of 1');
    expect(text[1]?.trim()).toBe('');
    expect(text[2]).toContain('Statement for Second');
    expect(text[2]).toContain('Page 1 of 2');
    expect(text[3]).toContain('Page 2 of 2');
    expect(text[4]).toContain('Statement for Third');
    expect(text[4]).toContain('Page 1 of 1');
    expect(tagsOfPdf(pdf).match(/^ *H1/gm)).toHaveLength(3);
    expect(infoOfPdf(pdf)).toMatch(/Title: +Statements/);
  });

  it('are several PDFs together where there are more than one document holds', async () => {
    const papers = Array.from({ length: TOGETHER_MAX + 1 }, () => otherPapers()[1]);
    const made = await papersTogether(
      papers.filter((paper) => paper !== undefined),
      { size: 'a4', title: 'Receipts', language: 'en', fileName: 'all' },
    );
    expect(made.map((one) => one.ok && one.value.pages)).toEqual([2 * TOGETHER_MAX - 1, 1]);
  });

  it('stops, and tells, where a paper cannot be kept', async () => {
    let asked = 0;
    const full = paperPdfs(many, {
      size: 'a4',
      each: () => {
        asked += 1;
        throw new Error('disk is full');
      },
    });
    await expect(full).rejects.toThrow('disk is full');
    expect(asked).toBeLessThan(many.length);
  });
});
