import { describe, expect, it } from 'vitest';
import type { Paper, TableBlock } from '../statements/paper.ts';
import { type LaidOutTable, laidOut } from './table-layout.ts';

const table: TableBlock = {
  block: 'table',
  columns: [
    { head: 'Day', shows: 'text' },
    { head: 'What happened', shows: 'text' },
    { head: 'Amount', shows: 'number' },
  ],
  rows: [['24 Feb 2027', 'Goods out', '$1,000,000,000.00']],
};

function laidOutOne(block: TableBlock): LaidOutTable {
  const paper: Paper = {
    fileName: 'x',
    language: 'en',
    title: '',
    over: '',
    facts: [],
    foot: '',
    pageOf: '',
    blocks: [block],
  };
  const [made] = laidOut(paper).blocks;
  if (made?.block !== 'table') throw new Error('a table stays a table');
  return made;
}

/** The heights of rows that have these texts in the column that grows. */
function heightsFor(...texts: string[]): readonly (number | 'auto')[] {
  return laidOutOne({ ...table, rows: texts.map((text) => ['24 Feb 2027', text, '$1.00']) })
    .heights;
}

describe('column widths', () => {
  it('give the last text column the room that is left, and amounts all the room they need', () => {
    const boxed: TableBlock = {
      ...table,
      columns: [...table.columns, { head: 'Singles', shows: 'box' }],
    };
    const { widths } = laidOutOne(boxed);
    expect(widths[1]).toBe('grow');
    expect(widths[3]).toBe(68);
    // 17 characters of 9 points; figures are 0.572 of the size wide, marks 0.268.
    expect(widths[2]).toBeGreaterThan(12 * 0.572 * 9 + 4 * 0.268 * 9);
  });

  it('keep a narrow table narrow', () => {
    const { widths } = laidOutOne({ ...table, narrow: true });
    expect(widths).not.toContain('grow');
  });
});

describe('row heights', () => {
  it('are known where every text stands on one line', () => {
    expect(heightsFor('Payment, cash', 'Goods out: 5 Wildflower honey')).toEqual([13, 13]);
  });

  it('are left to the typesetter where a text may need a second line', () => {
    expect(heightsFor('W'.repeat(50), 'Payment', 'i'.repeat(100))).toEqual(['auto', 13, 13]);
  });

  it('are left to the typesetter for letters that join or stack', () => {
    expect(heightsFor('עמר', 'नेहा', '中村', 'Kő Ñandú Жанна')).toEqual([
      'auto',
      'auto',
      'auto',
      13,
    ]);
  });

  it('are left to the typesetter beside boxes to write in', () => {
    const columns = [{ head: 'Singles', shows: 'box' }] as const;
    expect(laidOutOne({ block: 'table', columns, rows: [['']] }).heights).toEqual(['auto']);
  });
});
