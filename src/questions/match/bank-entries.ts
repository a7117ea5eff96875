import { daysBetween } from '../../base/day.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord } from '../../records/record.ts';

/** What one record says should be on the bank's statement: a record may show as two lines. */
export interface BankEntry {
  readonly record: string;
  readonly kind: MovementRecord['kind'];
  /** The record's day. */
  readonly date: string;
  /** Minor units; positive comes in. Never 0. */
  readonly cents: number;
  /** A deposit slip's number or another word to look for in the bank's text. */
  readonly slip: string | undefined;
}

/** Entries of every record that touches the bank account, by day. */
export function bankEntries(ledger: Ledger): BankEntry[] {
  return ledger
    .movements()
    .flatMap((movement) =>
      amountsOf(ledger, movement).map((cents) => ({
        record: movement.id,
        kind: movement.kind,
        date: movement.date,
        cents,
        slip: movement.kind === 'deposit' ? movement.slip : undefined,
      })),
    )
    .filter(({ cents }) => cents !== 0);
}

/** Amounts that the bank may show one by one; together they are the record's posting to `bank`. */
function amountsOf(ledger: Ledger, movement: MovementRecord): number[] {
  switch (movement.kind) {
    case 'deposit':
      return [movement.cents];
    case 'card-settle':
      return movement.to === 'bank' ? [movement.cents] : [];
    case 'debit':
    case 'bank-fee':
      return [-movement.cents];
    case 'debit-returned': {
      const debit = ledger.standing.currentOf(movement.debit);
      return [debit?.kind === 'debit' ? debit.cents : 0, -(movement.fee ?? 0)];
    }
    case 'bounced': {
      const payment = ledger.standing.currentOf(movement.payment);
      return [payment?.kind === 'payment' ? -payment.cents : 0, -(movement.fee ?? 0)];
    }
    default:
      return [];
  }
}

/** Days from some fixed day: only differences are looked at. */
export function dayNumber(day: string): number {
  return daysBetween('2000-01-01', day);
}
