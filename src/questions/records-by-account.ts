import type { Ledger } from '../ledger/ledger.ts';
import type { Mover } from '../ledger/posting.ts';
import type { MovementRecord } from '../records/record.ts';

/** Which of the three ledgers an account belongs to. */
export type LedgerName = 'stock' | 'money' | 'credit';

/** The movements that count and touch an account, by the day they happened. */
export type RecordsByAccount = (ledger: LedgerName, account: string) => readonly MovementRecord[];

/** One pass over the book: which records stand behind each account's balance. */
export function recordsByAccount(ledger: Ledger): RecordsByAccount {
  const behind = new Map<string, MovementRecord[]>();
  for (const movement of ledger.movements()) {
    for (const account of accountsOf(ledger, movement)) {
      const records = behind.get(account);
      if (records === undefined) behind.set(account, [movement]);
      else records.push(movement);
    }
  }
  return (name, account) => behind.get(`${name}:${account}`) ?? [];
}

function accountsOf(ledger: Ledger, movement: MovementRecord): Set<string> {
  const accounts = new Set<string>();
  const noting =
    (name: LedgerName) =>
    (from: string, to: string, amount: number): void => {
      if (amount !== 0) accounts.add(`${name}:${from}`).add(`${name}:${to}`);
    };
  const money = noting('money');
  const stock = noting('stock');
  const credit = noting('credit');
  const mover: Mover = {
    stock: (_product, units, from, to) => stock(from, to, units),
    money: (minor, from, to) => money(from, to, minor),
    credit: (_product, units, from, to) => credit(from, to, units),
  };
  ledger.postingsTo(movement, mover);
  return accounts;
}
