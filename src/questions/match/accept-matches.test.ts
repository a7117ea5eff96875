import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { acceptMatches } from './accept-matches.ts';
import { asReconciled, bookAsWritten } from './as-reconciled.ts';
import { matchBank } from './match-bank.ts';

const book = testBook({ honey: 800 }, ['ada']);
const first = book.movement('deposit', { date: '2027-02-03', cents: 500 });
const second = book.movement('deposit', { date: '2027-02-20', cents: 700 });
const fee = book.movement('bank-fee', { date: '2027-02-04', cents: 30 });
const lines = [
  { line: 1, date: '2027-02-03', cents: 500, text: '', reference: 'F1' },
  { line: 2, date: '2027-02-06', cents: -30, text: '', reference: 'F2' },
];

function accepted() {
  const before = book.ledger([first, second, fee]);
  const edits = acceptMatches(before, matchBank(before, { lines }).matched, lines);
  const records = edits.map(({ kind, ...said }) => book.movement(kind, said));
  return { edits, records, ledger: book.ledger([first, second, fee, ...records]) };
}

describe('accepted matches', () => {
  it('are edits that say the bank’s line, and change no balance', () => {
    const { edits, ledger } = accepted();
    expect(edits).toEqual([
      expect.objectContaining({
        replaces: first.id,
        cleared: { date: '2027-02-03', reference: 'F1' },
      }),
      expect.objectContaining({
        replaces: fee.id,
        cleared: { date: '2027-02-06', reference: 'F2' },
      }),
    ]);
    expect(ledger.balances.moneyOf('bank')).toBe(1170);
  });

  it('of the same file a second time are none', () => {
    const { ledger } = accepted();
    const again = matchBank(ledger, { lines });
    expect(again.matched.map(({ why }) => why.kind)).toEqual(['accepted', 'accepted']);
    expect(acceptMatches(ledger, again.matched, lines)).toEqual([]);
  });
});

describe('a finished reconciliation', () => {
  it('tells both balances of a day and what lies between them', () => {
    const { ledger } = accepted();
    const day = asReconciled(ledger, '2027-02-05');
    expect(day).toMatchObject({ bookBalance: 470, bankBalance: 500 });
    expect(day.notAtBank).toMatchObject([{ cents: -30 }]);
    const later = asReconciled(ledger, '2027-02-28');
    expect(later).toMatchObject({ bookBalance: 1170, bankBalance: 470 });
    expect(later.notAtBank).toMatchObject([{ record: second.id }]);
  });

  it('is the same again after later records and edits', () => {
    const { ledger, records } = accepted();
    const written = records.at(-1)?.at ?? '';
    const then = asReconciled(ledger, '2027-02-28');
    const more = book.movement('deposit', { date: '2027-02-10', cents: 9999 });
    const edit = book.movement('deposit', { date: '2027-02-20', cents: 1, replaces: second.id });
    const all = book.ledger([first, second, fee, ...records, more, edit]);
    expect(asReconciled(all, '2027-02-28')).not.toEqual(then);
    expect(asReconciled(bookAsWritten(all, written), '2027-02-28')).toEqual(then);
  });
});
