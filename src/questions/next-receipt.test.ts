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
  return nextReceipt(book.ledger(payments));
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
    expect(nextReceipt(book.ledger([payment, book.remove(payment.id)]))).toBe('5');
  });
});
