/** What browser-fold.ts runs inside the page: reads the lines and folds them, again and again. */
import { Ledger } from '../src/ledger/ledger.ts';
import type { BookRecord } from '../src/records/record.ts';

export interface FoldTimes {
  /** Milliseconds of each run, the first one cold. */
  readonly parse: number[];
  readonly fold: number[];
  /** Of the last fold, to be held against the same fold elsewhere. */
  readonly accounts: unknown;
}

/** @param lines one record a line, as in a book file without its header */
export function timeFolds(lines: readonly string[], runs: number): FoldTimes {
  const parse: number[] = [];
  const fold: number[] = [];
  let accounts: unknown;
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now();
    const records = lines.map((line): BookRecord => JSON.parse(line));
    const read = performance.now();
    const { balances } = Ledger.of(records);
    balances.moneyOf('bank');
    const folded = performance.now();
    parse.push(read - start);
    fold.push(folded - read);
    accounts = balances.toAccounts();
  }
  return { parse, fold, accounts };
}
