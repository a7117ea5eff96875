import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { english } from '../words/english.ts';
import { handOutPaper } from './hand-out-paper.ts';
import { hostReportPaper } from './host-report-paper.ts';
import { hoursText } from './hours-text.ts';
import type { Paper } from './paper.ts';
import { prizeOrderPaper } from './prize-order-paper.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const { movement, setting } = book;
const context = { says: () => english, group: 'Wrenfield Young Rowers', asAt: '2027-04-04' };
const ledger = book.ledger([
  setting('level', { level: 'badge', units: 5, prize: 'Badge' }),
  setting('level', { level: 'shirt', units: 10, prize: 'Shirt', choices: ['S', 'M'] }),
  setting('choice', { seller: 'ada', level: 'shirt', choice: 'M' }),
  setting('choice', { seller: 'ben', level: 'shirt', choice: 'S' }),
  movement('handover', { seller: 'ada', lines: { honey: 12 } }),
  movement('handover', { seller: 'ben', lines: { honey: 6 } }),
  movement('stall-close', {
    stall: 'quay',
    out: { honey: 9 },
    back: { honey: 2 },
    float: 0,
    cash: 5600,
    cards: 0,
    cheques: 0,
  }),
]);
const tables = ({ blocks }: Paper) => blocks.filter((block) => block.block === 'table');

describe('papers of prizes', () => {
  it('the order has a line a prize and choice, and says what may still change', () => {
    const paper = prizeOrderPaper(ledger, context);
    expect(tables(paper)[0]).toMatchObject({
      rows: [
        ['Badge', '', '2', ''],
        ['Shirt', 'M', '1', ''],
      ],
      totals: [['Total', '', '3', '']],
    });
    expect(JSON.stringify(paper)).toContain('7 units are not yet shared');
  });

  it('the hand-out list has a box a prize, and apart from it what a leader decides', () => {
    const [list, decide] = tables(handOutPaper(ledger, context));
    expect(list?.rows).toEqual([
      ['ada', 'Badge', '', ''],
      ['ada', 'Shirt, M', '', ''],
      ['ben', 'Badge', '', ''],
    ]);
    expect(list?.columns.map(({ shows }) => shows)).toEqual(['text', 'text', 'box', 'box']);
    expect(decide?.rows).toEqual([['ben', 'Shirt, S']]);
  });
});

describe('the report for a host shop', () => {
  it('is one page of stalls and products, without anybody who sells', () => {
    const paper = hostReportPaper(ledger, 'market', context);
    if (!paper.ok) throw new Error(paper.refusal.name);
    expect(tables(paper.value).map(({ rows }) => rows)).toEqual([
      [['1 Feb 2027, 09:00 to 12:00', '3 h', '7', '$56.00']],
      [['honey', '7', '$56.00']],
    ]);
    const said = JSON.stringify(paper.value);
    for (const name of ['ada', 'ben', 'Robin']) expect(said).not.toContain(name);
    expect(hostReportPaper(ledger, 'nobody', context)).toEqual({
      ok: false,
      refusal: { name: 'unknown_host' },
    });
  });

  it('tells hours as people say them', () => {
    expect([0, 45, 60, 195].map((minutes) => hoursText(minutes, english))).toEqual([
      '0 min',
      '45 min',
      '1 h',
      '3 h 15 min',
    ]);
  });
});
