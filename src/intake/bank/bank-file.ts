/** What a bank says happened on an account, whatever format it came in. */
export interface BankFile {
  /** In the order of the file. */
  readonly lines: readonly BankLine[];
  /** What the account held after the last line, in minor units, where the file says it. */
  readonly closing: number | undefined;
  /** What it held before the first line, in minor units, where the file says it. */
  readonly opening: number | undefined;
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
