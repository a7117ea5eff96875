import type { Ledger } from '../ledger/ledger.ts';
import type { MovementRecord } from '../records/record.ts';
import { type LedgerName, postingsOf } from './postings-of.ts';

/** The movements that count and touch an account, by the day they happened. */
export type RecordsByAccount = (ledger: LedgerName, account: string) => readonly MovementRecord[];

/**
 * One pass over the book: which records stand behind each account's balance.
 *
 * @param movements as `ledger.movements()` gives them
 */
export function recordsByAccount(
  ledger: Ledger,
  movements: readonly MovementRecord[],
): RecordsByAccount {
  const behind = new Map<string, MovementRecord[]>();
  for (const movement of movements) {
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
  for (const { ledger: name, from, to } of postingsOf(ledger, movement)) {
    accounts.add(`${name}:${from}`).add(`${name}:${to}`);
  }
  return accounts;
}
