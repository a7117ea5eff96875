import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import type { Paper } from '../statements/paper.ts';
import { stallSheetPaper } from '../statements/stall-sheet-paper.ts';
import { saysIn } from '../words/all-languages.ts';
import { paperPdf } from './paper-pdf.ts';
import { infoOfPdf, textOfPdf } from './test-papers.ts';

const context = { group: 'Wrenfield Young Rowers', asAt: '2027-02-01', says: saysIn };

function sheetOf(products: number, stall = 'quay'): Paper | undefined {
  const names = Array.from({ length: products }, (_, at) => `product-${at + 10}`);
  const book = testBook(Object.fromEntries(names.map((name) => [name, 650])), ['ada']);
  const quay = book.setting('stall', {
    stall: 'quay',
    host: 'market',
    starts: '2027-02-01T09:00',
    ends: '2027-02-01T12:00',
    shifts: [{ seller: 'ada', from: '09:00', to: '11:00' }],
  });
  const paper = stallSheetPaper(book.ledger([quay]), stall, context);
  return paper.ok ? paper.value : undefined;
}

async function printed(paper: Paper | undefined): Promise<Uint8Array> {
  if (paper === undefined) throw new Error('the test book has the stall');
  const pdf = await paperPdf(paper, { size: 'a4' });
  if (!pdf.ok) throw new Error(pdf.refusal.name);
  return pdf.value.pdf;
}

describe('the sheet of a stall on paper', () => {
  it('has the fields of phone and settle sheet, and nothing to copy', async () => {
    const text = textOfPdf(await printed(sheetOf(3)));
    const wanted = [
      ...['Taken out', 'Brought', 'Left', 'Damaged', 'Float', 'First drop', 'Box at the end'],
      ...['Card takings', 'Cheques', 'Paid out', 'Note', 'First counter', 'Second counter'],
      ...['First adult', 'Host contact', 'Who holds the cash', 'When to stop', 'Unloaded'],
      ...['ada 09:00 to 11:00', 'Nobody is down for', '11:00 to 12:00', 'given by', 'held by'],
    ];
    for (const words of wanted) expect(text).toContain(words);
    expect(text).not.toMatch(/should|expected/i);
  });

  it('stays on one page of A4 with 25 products', async () => {
    expect(infoOfPdf(await printed(sheetOf(25)))).toMatch(/Pages: +1\n/);
    expect(infoOfPdf(await printed(sheetOf(60)))).toMatch(/Pages: +2\n/);
  });

  it('is of a stall that is there', () => {
    expect(sheetOf(1, 'gate')).toBe(undefined);
  });
});
