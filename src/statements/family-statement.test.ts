import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { familyAccount } from '../questions/family-account.ts';
import type { BookRecord } from '../records/record.ts';
import { english } from '../words/english.ts';
import { familyStatement } from './family-statement.ts';
import type { Paper, TableBlock } from './paper.ts';

const book = testBook({ honey: 600, jam: 650 }, ['ada']);
const context = {
  says: () => english,
  group: 'Wrenfield Young Rowers',
  asAt: '2027-03-12',
  ask: 'Jo Reyes',
};

function statementOf(records: readonly BookRecord[]): Paper {
  const ledger = book.ledger(records);
  const account = familyAccount(ledger, 'home');
  if (!account.ok) throw new Error(account.refusal.name);
  return familyStatement(account.value, ledger, context);
}

const exampleOfTheIssue = [
  book.movement('handover', { seller: 'ada', lines: { honey: 60 }, slip: '12' }),
  book.movement('payment', { seller: 'ada', tender: 'cash', cents: 20000, receipt: 'A-1' }),
];

describe('the family statement', () => {
  it('says its arithmetic in one sentence', () => {
    expect(leadOf(statementOf(exampleOfTheIssue))).toBe(
      'Taken 60, brought back 0, paid $200.00, still to pay $160.00.',
    );
  });

  it('shows the same sum in money, and every dated line with the amount still to pay', () => {
    const paper = statementOf(exampleOfTheIssue);
    expect(sumOf(paper)).toBe(
      'Taken $360.00, less brought back $0.00, less paid $200.00: still to pay $160.00.',
    );
    expect(tablesOf(paper)[0]?.rows).toEqual([
      ['1 Feb 2027', 'Goods out: 60 honey (slip 12)', '+$360.00', '$360.00'],
      ['1 Feb 2027', 'Payment, cash (receipt A-1)', '−$200.00', '$160.00'],
    ]);
  });

  it('names someone to ask, the day, and the last record', () => {
    const paper = statementOf(exampleOfTheIssue);
    expect(paper.facts.map((fact) => fact.value)).toEqual([
      '12 Mar 2027',
      'ada',
      exampleOfTheIssue[1]?.id,
    ]);
    const words = paper.blocks.flatMap((one) => (one.block === 'words' ? [one.text] : []));
    expect(words.at(-1)).toContain('Ask Jo Reyes, who is not the treasurer.');
  });

  it('names the rarer parts only where they occur', () => {
    const cheque = book.movement('payment', { seller: 'ada', tender: 'cheque', cents: 5000 });
    const paper = statementOf([
      ...exampleOfTheIssue,
      cheque,
      book.movement('bounced', { payment: cheque.id, fee: 1200, charge: true }),
      book.movement('online', {
        order: 'W1',
        seller: 'ada',
        lines: {},
        gifts: { jam: 1 },
        paid: 650,
        sent: 'post',
      }),
      book.movement('gift', { seller: 'ada', lines: { jam: 1 }, from: 'supplier', order: 'W1' }),
    ]);
    expect(leadOf(paper)).toBe(
      'Taken 60, gift units 1, brought back 0, paid $250.00, cheque that came back $50.00, ' +
        'bank fee $12.00, paid online by buyers $6.50, still to pay $172.00.',
    );
    const lines = tablesOf(paper)[0]?.rows.map((row) => row[1]);
    expect(lines).toContain('Posted to a buyer, paid online: to give away 1 jam (order W1)');
  });

  it('says that a family is in credit, never a minus', () => {
    const paper = statementOf([
      book.movement('payment', { seller: 'ada', tender: 'cash', cents: 500 }),
    ]);
    expect(leadOf(paper)).toBe('Taken 0, brought back 0, paid $5.00, in credit $5.00.');
    expect(sumOf(paper)).toMatch(/: in credit \$5\.00\.$/);
    expect(tablesOf(paper)[0]?.rows[0]?.at(-1)).toBe('in credit $5.00');
  });

  it('says so where nothing has happened yet', () => {
    expect(tablesOf(statementOf([]))).toEqual([]);
    expect(JSON.stringify(statementOf([]))).toContain('Nothing has been written down');
  });

  it('shows who of several sellers owes what', () => {
    const ledger = book.ledger([
      book.setting('seller', { seller: 'ben', name: 'Ben H.', family: 'home', active: true }),
      ...exampleOfTheIssue,
    ]);
    const account = familyAccount(ledger, 'home');
    if (!account.ok) throw new Error(account.refusal.name);
    const [bySeller, lines] = tablesOf(familyStatement(account.value, ledger, context));
    expect(bySeller?.rows).toEqual([
      ['ada', '60', '$160.00'],
      ['Ben H.', '0', '$0.00'],
    ]);
    expect(lines?.columns[1]?.head).toBe('Seller');
  });
});

describe('the arithmetic that is printed', () => {
  const record = fc.oneof(
    fc
      .integer({ min: 1, max: 30 })
      .map((units) => book.movement('handover', { seller: 'ada', lines: { honey: units } })),
    fc
      .integer({ min: 1, max: 30 })
      .map((units) => book.movement('return', { seller: 'ada', lines: { jam: units } })),
    fc
      .integer({ min: 0, max: 40_000 })
      .map((cents) => book.movement('payment', { seller: 'ada', tender: 'cash', cents })),
    fc
      .integer({ min: 0, max: 9000 })
      .map((cents) => book.movement('refund', { seller: 'ada', tender: 'cash', cents })),
  );
  const records = fc.array(record, { maxLength: 8 });

  it('adds up as a reader with a pencil would add it', () => {
    fc.assert(fc.property(records, (records) => addsUp(statementOf(records))));
  });

  it('would be caught where a row said the wrong way', () => {
    const wrong = (paper: Paper): Paper =>
      JSON.parse(JSON.stringify(paper).replaceAll('plus paid back', 'less paid back'));
    const checked = fc.check(
      fc.property(records, (records) => addsUp(wrong(statementOf(records)))),
      { seed: 1 },
    );
    expect(checked.failed).toBe(true);
  });
});

/** Reads the printed sum: parts that begin with "less" take off, all others add. */
function addsUp(paper: Paper): boolean {
  const minor = (text = '') => Number(text.replace(/[^0-9]/g, ''));
  const [parts = '', end = ''] = sumOf(paper).split(': ');
  let total = 0;
  for (const part of parts.split(', ')) total += (part.startsWith('less') ? -1 : 1) * minor(part);
  return total === (end.startsWith('in credit') ? -1 : 1) * minor(end);
}

function leadOf(paper: Paper): string | undefined {
  const lead = paper.blocks.find((one) => one.block === 'lead');
  return lead?.text;
}

function tablesOf(paper: Paper): TableBlock[] {
  return paper.blocks.flatMap((block) => (block.block === 'table' ? [block] : []));
}

/** The sum in money, which is the first line of plain words. */
function sumOf(paper: Paper): string {
  const words = paper.blocks.find((block) => block.block === 'words');
  return words?.text ?? '';
}
