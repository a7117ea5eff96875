import { describe, expect, it } from 'vitest';
import { paperPdfs } from './paper-batch.ts';
import { PaperPrinter } from './paper-printer.ts';
import { statementOf } from './test-papers.ts';

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
