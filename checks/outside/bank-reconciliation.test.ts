import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/base/day.ts';
import { testBook } from '../../src/ledger/test-book.ts';
import { matchBank } from '../../src/questions/match/match-bank.ts';
import { reconciliation } from '../../src/questions/match/reconciliation.ts';
import cases from './data/bank-reconciliation.json' with { type: 'json' };

/**
 * Published bank reconciliations end to end, the source beside each case in the data file (IRS
 * Publication 583 and OpenStax, Principles of Accounting, volume 1, sections 8.4 and 8.6). A book
 * and a statement are made of the figures: what both have, what is in transit, cheques not yet
 * shown (as debits, the kind of record that takes money out), what only the bank has, what the book
 * keyed otherwise, and the bank's errors. Our adjusted balances must be the published ones.
 */
type Case = (typeof cases)[number];

const DAY = '2027-02-01';
const sum = (amounts: readonly number[]) => amounts.reduce((total, each) => total + each, 0);

function made(of: Case) {
  const book = testBook({ honey: 800 }, ['ada']);
  const move = (cents: number, date: string) =>
    cents < 0
      ? book.movement('debit', { date, cents: -cents })
      : book.movement('deposit', { date, cents });
  const wrong = of.bookErrors.map(({ book: cents }) => cents);
  const open = [...of.inTransit, ...of.outstanding.map((cents) => -cents)];
  const base = of.book - sum([...open, ...of.shown, ...wrong]);
  const bankOnly = [...of.onlyAtBank, ...of.bankErrors];
  const right = of.bookErrors.map(({ bank }) => bank);
  const baseLine = of.bank - sum([...bankOnly, ...of.shown, ...right]);
  // Weeks apart, so that nothing is taken for anything else.
  const dayOf = (place: number) => addDays(DAY, place * 20);
  const both = [...(base === 0 && baseLine === 0 ? [] : [base]), ...of.shown, ...wrong];
  const records = both.map((cents, place) => move(cents, dayOf(place)));
  const shown = [...(base === 0 && baseLine === 0 ? [] : [baseLine]), ...of.shown, ...right];
  const later = open.map((cents, place) =>
    move(cents, dayOf(both.length + bankOnly.length + place)),
  );
  const lines = [...shown, ...bankOnly].map((cents, place) => ({
    line: place + 1,
    date: dayOf(place),
    cents,
    text: '',
  }));
  const errors = lines.slice(lines.length - of.bankErrors.length).map(({ line }) => line);
  return { ledger: book.ledger([...records, ...later]), lines, errors: new Set(errors) };
}

describe('published bank reconciliations', () => {
  it.each(cases)('$id comes to $adjusted on both sides', (each) => {
    const { ledger, lines, errors } = made(each);
    const match = matchBank(ledger, { lines, opening: 0, closing: each.bank });
    const found = reconciliation(
      ledger,
      match,
      lines,
      each.bankErrors.length > 0 ? errors : undefined,
    );
    expect(found).toMatchObject({
      bookBalance: each.book,
      bankBalance: each.bank,
      adjustedBook: each.adjusted,
      adjustedBank: each.adjusted,
      difference: 0,
    });
    const listed = found.toBank.flatMap(({ record, cents }) => (record === undefined ? [] : cents));
    const wanted = [...each.inTransit, ...each.outstanding.map((cents) => -cents)];
    expect(listed.toSorted()).toEqual(wanted.toSorted());
    expect(match.differ).toHaveLength(each.bookErrors.length);
  });

  it('teeth: a figure that is off by one shows as a difference', () => {
    const [first] = cases;
    if (first === undefined) throw new Error('no case');
    const { ledger, lines } = made(first);
    const match = matchBank(ledger, { lines, opening: 0, closing: first.bank + 1 });
    expect(reconciliation(ledger, match, lines).difference).toBe(-1);
  });
});
