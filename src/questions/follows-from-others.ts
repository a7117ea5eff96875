import type { LedgerName } from './postings-of.ts';

/** Accounts whose balances follow from those of others. */
const FOLLOWING: ReadonlySet<string> = new Set(['money:goods', 'stock:supplier', 'credit:issued']);

/** True where a change of the account says nothing that other accounts do not say: noise. */
export function followsFromOthers(change: {
  readonly ledger: LedgerName;
  readonly account: string;
}): boolean {
  return FOLLOWING.has(`${change.ledger}:${change.account}`);
}
