import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { nextReceipt } from './next-receipt.ts';

const book = testBook({ honey: 800 }, ['ada']);

function nextAfter(...receipts: readonly (string | undefined)[]): string {
  const payments = receipts.map((receipt) =>
    book.movement('payment', {
      seller: 'ada',
      tender: 'cash',
      cents: 100,
      ...(receipt === undefined ? {} : { receipt }),
    }),
  );
  return nextReceipt(book.ledger(payments).standing.records());
}

describe('the next receipt number', () => {
  it('is one above the highest, written like it', () => {
    expect(nextAfter()).toBe('1');
    expect(nextAfter('7', undefined, '12', '9')).toBe('13');
    expect(nextAfter('R-009', 'R-008')).toBe('R-010');
    expect(nextAfter('lost')).toBe('1');
  });

  it('does not give the number of a removed payment again', () => {
    const payment = book.movement('payment', {
      seller: 'ada',
      tender: 'cash',
      cents: 1,
      receipt: '4',
    });
    expect(nextReceipt([payment, book.remove(payment.id)])).toBe('5');
  });

  it('counts a device on in its own series only', () => {
    const given = ['R-090', 'K7-002', 'K7-001', 'K78-5'].map((receipt) =>
      book.movement('payment', { seller: 'ada', tender: 'cash', cents: 1, receipt }),
    );
    expect(nextReceipt(given, 'K7-')).toBe('K7-003');
    expect(nextReceipt(given, 'M3-')).toBe('M3-001');
  });
});
