import { describe, expect, it } from 'vitest';
import type { Paper, TableBlock } from '../statements/paper.ts';
import { type LaidOutBlock, laidOut } from './table-layout.ts';

const table: TableBlock = {
  block: 'table',
  columns: [
    { head: 'Day', shows: 'text' },
    { head: 'What happened', shows: 'text' },
    { head: 'Amount', shows: 'number' },
    { head: 'Singles', shows: 'box' },
  ],
  rows: [['24 Feb 2027', 'Goods out', '$1,000,000,000.00', '']],
};

function laidOutOne(block: Paper['blocks'][number]): LaidOutBlock | undefined {
  const paper = { fileName: 'x', language: 'en', title: '', over: '', facts: [], foot: '' };
  return laidOut({ ...paper, pageOf: '', blocks: [block] }).blocks[0];
}

describe('column widths', () => {
  it('give the last text column the room that is left, and amounts all the room they need', () => {
    const made = laidOutOne(table);
    const widths = made?.block === 'table' ? made.widths : [];
    expect(widths[1]).toBe('grow');
    expect(widths[3]).toBe(68);
    // 17 characters of 9 points; figures are 0.572 of the size wide.
    expect(widths[2]).toBeGreaterThan(11 * 0.572 * 9 + 5 * 0.268 * 9);
  });

  it('keep a narrow table narrow, and give it its room beside another', () => {
    const narrow = { ...table, narrow: true };
    const made = laidOutOne({ block: 'beside', first: [narrow], second: [] });
    expect(made?.block === 'beside' && made.width).toBeGreaterThan(200);
  });
});
