import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { BookRecord } from '../../records/record.ts';
import { asReconciled } from './as-reconciled.ts';
import { type ErrorsEdit, markedAsError, unmarked } from './bank-errors.ts';
import { matchBank } from './match-bank.ts';
import { reconciliation } from './reconciliation.ts';

const made = testBook({}, []);
const deposit = made.movement('deposit', { cents: 5000, date: '2027-02-03' });
const own = { line: 1, date: '2027-02-03', cents: 5000, text: 'Deposit' };
const wrong = { line: 2, date: '2027-02-04', cents: -900, text: 'Cheque of another account' };
const again = { ...wrong, line: 3 };
const lines = [own, wrong, again];

function taken(edit: ErrorsEdit | undefined): BookRecord {
  if (edit === undefined) throw new Error('there is a season');
  const { replaces, kind: _kind, ...said } = edit;
  return { ...made.setting('season', said), replaces };
}

describe('a line that the bank itself got wrong', () => {
  const before = made.ledger([deposit]);
  const mark = taken(markedAsError(before, wrong));
  const ledger = made.ledger([deposit, mark]);

  it('is marked alone: the same line once more is another', () => {
    const found = matchBank(ledger, { lines });
    expect(found).toMatchObject({ bankErrors: [2], unmatchedLines: [3], wrongAtBank: -900 });
    expect(matchBank(before, { lines })).toMatchObject({ bankErrors: [], unmatchedLines: [2, 3] });
  });

  it('keeps the sums even: book, less on the way, plus only there, plus wrong, is the bank', () => {
    for (const each of [before, ledger]) {
      const found = matchBank(each, { lines });
      const { bookBalance, outstanding, notInBook, wrongAtBank, bankBalance } = found;
      expect(bookBalance - outstanding + notInBook + wrongAtBank).toBe(bankBalance);
    }
  });

  it('goes to the bank in the reconciliation, and stays in the one printed later', () => {
    const sides = reconciliation(ledger, matchBank(ledger, { lines: [own, wrong] }), lines);
    expect(sides).toMatchObject({ toBook: [], toBank: [{ line: 2, cents: 900 }], difference: 0 });
    expect(asReconciled(ledger, '2027-02-03').bankErrors).toEqual([]);
    const cleared = { date: '2027-02-03' };
    const says = { cents: 5000, date: '2027-02-03', cleared, replaces: deposit.id };
    const edit = made.movement('deposit', says);
    const found = asReconciled(made.ledger([deposit, mark, edit]), '2027-02-28');
    expect(found).toMatchObject({ bookBalance: 5000, bankBalance: 4100, notAtBank: [] });
    expect(found.bankErrors).toMatchObject([{ cents: -900, text: wrong.text }]);
  });

  it('can be unmarked, and nothing else of the season changes', () => {
    const edit = unmarked(ledger, wrong);
    expect(edit).toMatchObject({ name: 'Spring 2027', currency: 'USD', bankErrors: [] });
    expect(matchBank(made.ledger([deposit, mark, taken(edit)]), { lines }).bankErrors).toEqual([]);
  });
});
