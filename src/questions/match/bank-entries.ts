import { daysBetween } from '../../base/day.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord, RecordOf } from '../../records/record.ts';

/** The kinds of record that show on the bank's statement. */
export type BankKind =
  | 'deposit'
  | 'card-settle'
  | 'debit'
  | 'debit-returned'
  | 'bank-fee'
  | 'bounced';

/** What one record says should be on the bank's statement: a record may show as two lines. */
export interface BankEntry {
  readonly record: string;
  readonly kind: BankKind;
  /** The record's day. */
  readonly date: string;
  /** Minor units; positive comes in. Never 0. */
  readonly cents: number;
  /** A deposit slip's number: a word to look for in the bank's text. */
  readonly slip: string | undefined;
  /** The bank's line that a person has taken for it. */
  readonly cleared: { readonly date: string; readonly reference?: string } | undefined;
}

/** Entries of every record that touches the bank account, by day. */
export function bankEntries(ledger: Ledger): BankEntry[] {
  return ledger.movements().flatMap((movement) => {
    if (!isBankRecord(movement)) return [];
    const { id: record, kind, date, cleared } = movement;
    const slip = movement.kind === 'deposit' ? movement.slip : undefined;
    return amountsOf(ledger, movement)
      .filter((cents) => cents !== 0)
      .map((cents) => ({ record, kind, date, cents, slip, cleared }));
  });
}

export function isBankRecord(movement: MovementRecord): movement is RecordOf<BankKind> {
  return BANK_KINDS.has(movement.kind);
}

const BANK_KINDS: ReadonlySet<string> = new Set<BankKind>([
  'deposit',
  'card-settle',
  'debit',
  'debit-returned',
  'bank-fee',
  'bounced',
]);

/** Amounts that the bank may show one by one; together they are the record's posting to `bank`. */
function amountsOf(ledger: Ledger, movement: RecordOf<BankKind>): number[] {
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
  }
}

/** Days from some fixed day: only differences are looked at. */
export function dayNumber(day: string): number {
  return daysBetween('2000-01-01', day);
}
