import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { missingBankRecords } from './missing-bank-records.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const cheque = book.movement('payment', { seller: 'ada', tender: 'cheque', cents: 9000 });
const cash = book.movement('payment', { seller: 'ben', tender: 'cash', cents: 4025 });
const card = book.movement('payment', { seller: 'ben', tender: 'card', cents: 8200 });
const debit = book.movement('debit', { date: '2027-02-05', cents: 120_000 });

function offered(records: Parameters<typeof book.ledger>[0], cents: number, text = '') {
  const line = { line: 1, date: '2027-02-09', cents, text };
  return missingBankRecords(book.ledger(records), [line])[0]?.record;
}

describe('the record that a line of the bank is missing', () => {
  it('is a deposit of all receipts that wait, or of the only set that comes to it', () => {
    const items = [cheque.id, cash.id];
    expect(offered([cheque, cash], 13_025)).toMatchObject({ kind: 'deposit', items });
    expect(offered([cheque, cash], 4025)).toMatchObject({ kind: 'deposit', items: [cash.id] });
    const twin = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 4025 });
    expect(offered([cheque, cash, twin], 4025)).toBeUndefined();
  });

  it('is a card payout less a fee', () => {
    const record = { kind: 'card-settle', cents: 8050, fee: 150, to: 'bank' };
    expect(offered([card, cash], 8050, 'CARD PAYOUT')).toMatchObject(record);
    expect(offered([card, cash], 6000, 'CARD PAYOUT')).toBeUndefined();
  });

  it('is a cheque that came back, with the fee where the line holds both', () => {
    const record = { kind: 'bounced', payment: cheque.id };
    expect(offered([cheque], -9000)).toEqual({ ...record, date: '2027-02-09' });
    expect(offered([cheque], -10_200, 'Returned item')).toMatchObject({ ...record, fee: 1200 });
    expect(offered([cheque], -10_200, 'Shop')).toBeUndefined();
  });

  it('is a fee, a debit, or a debit that was sent back', () => {
    expect(offered([], -1200, 'Monthly service fee')).toMatchObject({
      kind: 'bank-fee',
      cents: 1200,
    });
    expect(offered([], -50_000, 'ACH LARKMEAD')).toMatchObject({ kind: 'debit', cents: 50_000 });
    const back = { kind: 'debit-returned', debit: debit.id };
    expect(offered([debit], 120_000)).toEqual({ ...back, date: '2027-02-09' });
    expect(offered([debit], 118_500)).toMatchObject({ ...back, fee: 1500 });
  });
});
