import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { LineToMatch } from './bank-window.ts';
import { matchBank, type StatementToMatch } from './match-bank.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const day = (of: number) => `2027-02-${String(of).padStart(2, '0')}`;

function deposit(of: number, cents: number, slip?: string) {
  return book.movement('deposit', {
    date: day(of),
    cents,
    ...(slip === undefined ? {} : { slip }),
  });
}

/** Lines as [day, minor units, text]. */
function statement(...lines: readonly (readonly [number, number, string?, string?])[]) {
  return lines.map(
    ([of, cents, text = '', reference], at): LineToMatch => ({
      line: at + 1,
      date: day(of),
      cents,
      text,
      reference,
    }),
  );
}

function matched(
  records: Parameters<typeof book.ledger>[0],
  lines: readonly LineToMatch[],
  more: Omit<StatementToMatch, 'lines'> = {},
) {
  return matchBank(book.ledger(records), { lines, ...more });
}

describe('one line for one record', () => {
  it('is sure where amount and day agree and nothing else has that amount', () => {
    const one = deposit(3, 20_100);
    const { matched: found } = matched([one], statement([3, 20_100]));
    expect(found).toEqual([
      { line: 1, records: [one.id], why: { kind: 'same_amount_and_day' }, sure: true },
    ]);
  });

  it.each([
    ['a later day', [deposit(3, 500)], statement([5, 500])],
    ['two such lines', [deposit(3, 500)], statement([3, 500], [6, 500])],
    ['two such records', [deposit(3, 500), deposit(8, 500)], statement([8, 500])],
    [
      'two such records, one of which the bank names',
      [deposit(3, 500, 'D-1'), deposit(8, 500, 'D-2')],
      statement([8, 500, 'DEPOSIT D-2']),
    ],
  ])('is not sure with %s', (_, records, lines) => {
    const { matched: found } = matched(records, lines);
    expect(found.map(({ sure }) => sure)).not.toContain(true);
    expect(found.length).toBeGreaterThan(0);
  });

  it('goes by the slip that the bank names, then by the nearest days', () => {
    const [first, second, third] = [deposit(1, 500), deposit(2, 500, 'D-2'), deposit(4, 500)];
    const lines = statement([4, 500, 'Deposit D-2'], [5, 500], [6, 500]);
    const { matched: found } = matched([first, second, third], lines);
    expect(found.map(({ records }) => records)).toEqual([[second.id], [first.id], [third.id]]);
  });

  it('is none where the days are too far apart', () => {
    const late = deposit(1, 500);
    expect(matched([late], statement([20, 500]))).toMatchObject({
      matched: [],
      unmatchedLines: [1],
      unmatchedRecords: [late.id],
      outstanding: 500,
      notInBook: 500,
    });
  });

  it('leaves the second of two like lines over where the book has one record', () => {
    const one = deposit(3, 500);
    const found = matched([one], statement([3, 500], [3, 500]));
    expect(found).toMatchObject({ matched: [{ line: 1, sure: false }], unmatchedLines: [2] });
    expect(matched([one, deposit(3, 500)], statement([3, 500], [3, 500])).matched).toHaveLength(2);
  });
});

describe('several together', () => {
  it('are several deposits in one line, never sure', () => {
    const parts = [deposit(3, 500), deposit(3, 700), deposit(4, 1100)];
    const { matched: found, choices } = matched(parts, statement([5, 1600]));
    expect(found).toMatchObject([{ line: 1, sure: false, why: { kind: 'records_together' } }]);
    expect(found[0]?.records).toEqual([parts[0]?.id, parts[2]?.id]);
    expect(choices).toEqual([]);
  });

  it('are left to a person where two sets come to the line', () => {
    const parts = [deposit(3, 500), deposit(3, 700), deposit(3, 300), deposit(3, 900)];
    const found = matched(parts, statement([3, 1200]));
    expect(found.matched).toEqual([]);
    expect(found.unmatchedLines).toEqual([1]);
    expect(found.choices).toHaveLength(1);
    expect(found.choices[0]?.sets).toHaveLength(2);
  });

  it('are one set where another line needs the other', () => {
    const parts = [deposit(3, 500), deposit(3, 700), deposit(9, 300), deposit(9, 900)];
    const found = matched(parts, statement([10, 1200], [15, 1200]));
    expect(found.choices).toEqual([]);
    expect(found.matched.map(({ records }) => records)).toEqual([
      [parts[0]?.id, parts[1]?.id],
      [parts[2]?.id, parts[3]?.id],
    ]);
  });

  it('are several lines for one deposit', () => {
    const one = deposit(3, 1600);
    const { matched: found } = matched([one], statement([3, 1000], [4, 600]));
    expect(found.map(({ line, records }) => [line, records])).toEqual([
      [1, [one.id]],
      [2, [one.id]],
    ]);
  });

  it('are card payouts of several stalls that the bank books at once', () => {
    const cards = [4000, 2500].map((cents) =>
      book.movement('card-settle', { date: day(6), cents, fee: 60, to: 'bank' }),
    );
    const { matched: found } = matched(cards, statement([8, 6500]));
    expect(found).toMatchObject([{ records: cards.map(({ id }) => id) }]);
  });
});

describe('what the bank sends back', () => {
  const payment = book.movement('payment', { seller: 'ada', tender: 'cheque', cents: 9000 });
  const bounced = book.movement('bounced', { date: day(9), payment: payment.id, fee: 1200 });
  const debit = book.movement('debit', { date: day(5), cents: 120_000 });
  const back = book.movement('debit-returned', { date: day(7), debit: debit.id, fee: 1500 });

  it.each([
    ['a cheque and its fee in two lines', statement([9, -9000], [9, -1200])],
    ['a cheque and its fee in one line', statement([10, -10_200])],
  ])('matches %s', (_, lines) => {
    const found = matched([payment, bounced], lines);
    expect(found).toMatchObject({ unmatchedLines: [], unmatchedRecords: [] });
    expect(found.matched.every(({ records }) => records[0] === bounced.id)).toBe(true);
  });

  it.each([
    ['two lines', statement([5, -120_000], [7, 120_000], [8, -1500])],
    ['one line less the fee', statement([5, -120_000], [7, 118_500])],
  ])('matches a returned debit in %s', (_, lines) => {
    const found = matched([debit, back], lines);
    expect(found).toMatchObject({ unmatchedLines: [], unmatchedRecords: [] });
  });
});

describe('near misses', () => {
  it.each([
    [12_340, 12_430, 'digits'],
    [12_340, 1234, 'digits'],
    [12_340, 12_840, 'digits'],
    [12_340, 9900, 'same_day'],
  ])('%i in the book and %i at the bank: %s', (ours, theirs, how) => {
    const one = deposit(3, ours);
    const found = matched([one], statement([3, theirs]));
    expect(found.differ).toEqual([{ line: 1, record: one.id, theirs, ours, how }]);
    expect(found).toMatchObject({ unmatchedLines: [1], unmatchedRecords: [one.id] });
  });

  it('is card takings less a fee that the book does not have', () => {
    const cards = book.movement('card-settle', { date: day(6), cents: 6500, fee: 0, to: 'bank' });
    expect(matched([cards], statement([8, 6307])).differ).toMatchObject([{ how: 'fee' }]);
  });

  it('is not said where two records are as near', () => {
    const found = matched([deposit(3, 12_340), deposit(3, 12_350)], statement([3, 12_330]));
    expect(found.differ).toEqual([]);
  });
});

describe('the statement as a whole', () => {
  it('gives both balances and what lies between them', () => {
    const records = [deposit(3, 500), deposit(20, 700)];
    const lines = statement([3, 500], [4, -30]);
    expect(matched(records, lines, { opening: 0, closing: 470 })).toMatchObject({
      bookBalance: 1200,
      outstanding: 700,
      notInBook: -30,
      bankBalance: 470,
    });
  });

  it('does not ask for what earlier statements have shown', () => {
    const records = [deposit(1, 5000), deposit(8, 300), deposit(12, 700)];
    const found = matched(records, statement([12, 700]), { opening: 5300, closing: 6000 });
    expect(found).toMatchObject({ unmatchedRecords: [], outstanding: 0 });
  });

  it('says which lines came twice, and which take each other back', () => {
    const one = deposit(3, 500);
    const lines = statement([3, 500, 'a', 'F1'], [3, 500, 'a', 'F1'], [4, 90], [5, -90]);
    expect(matched([one], lines)).toMatchObject({
      matched: [{ line: 1, sure: true }],
      repeated: [2],
      mirrored: [[3, 4]],
      unmatchedLines: [2, 3, 4],
      notInBook: 0,
    });
  });

  it('keeps what was accepted before, and looks for nothing else in it', () => {
    const [first, second] = [deposit(3, 500), deposit(4, 500)];
    const taken = book.movement('deposit', {
      date: day(4),
      cents: 500,
      replaces: second.id,
      cleared: { date: day(5), reference: 'F9' },
    });
    const lines = statement([4, 500, '', 'F8'], [5, 500, '', 'F9']);
    const found = matched([first, second, taken], lines).matched;
    expect(found).toMatchObject([
      { records: [first.id] },
      { records: [taken.id], why: { kind: 'accepted' } },
    ]);
    const later = matched([first, second, taken], statement([6, 500]));
    expect(later.matched).toMatchObject([{ records: [first.id] }]);
    expect(later.unmatchedRecords).toEqual([]);
  });
});
