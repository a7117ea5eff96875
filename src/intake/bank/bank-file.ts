import type { FileRefusal } from '../table/file-refusal.ts';

/** What a bank says happened on an account, whatever format it came in. */
export interface BankFile {
  /** In the order of the file. */
  readonly lines: readonly BankLine[];
  /** What the account held after the last line, in minor units, where the file says it. */
  readonly closing: number | undefined;
  /** What it held before the first line, in minor units, where the file says it. */
  readonly opening: number | undefined;
  /** The account's number, where the file says it: shown by its last digits alone. */
  readonly account?: string | undefined;
  /** ISO 4217 code, where the file says it. */
  readonly currency: string | undefined;
}

export interface BankLine {
  /** Its place among the file's own lines, from 1. */
  readonly line: number;
  /** The day it was booked (`YYYY-MM-DD`). */
  readonly date: string;
  /** Minor units; positive came in, negative went out. */
  readonly cents: number;
  /** Who and what for, in the bank's words. */
  readonly text: string;
  /** The bank's own name for the line, the same whenever it is sent again. */
  readonly reference: string | undefined;
}

/** A file of several accounts: only one can be the group's. */
export function severalAccounts(accounts: readonly string[]): FileRefusal {
  const said = `${accounts.length} accounts: ${accounts.map(accountTail).join(', ')}`;
  return { line: 0, field: 'account', said, wanted: "the statement of the group's account alone" };
}

/** The last four characters of an account's number, which tell it apart and give nothing away. */
function accountTail(account: string): string {
  return `…${account.slice(-4)}`;
}
