import type { Outcome } from '../../base/outcome.ts';
import type { BankFile, FileRefusal } from './bank-file.ts';
import type { BankColumns } from './csv-columns.ts';
import { readBankCsv } from './read-bank-csv.ts';
import { readCamt } from './read-camt.ts';
import { readOfx } from './read-ofx.ts';

/**
 * A file from a bank, whatever its format: OFX, camt.053, else CSV. Never throws.
 *
 * @param currency ISO 4217 code of the season
 */
export function readBankFile(
  text: string,
  currency: string,
  columns?: BankColumns,
): Outcome<BankFile, FileRefusal> {
  const start = text.slice(0, START);
  if (/<OFX>/i.test(text.slice(0, START * 4))) return readOfx(text, currency);
  if (/^\s*(?:\uFEFF)?<(?:\?xml|Document)/.test(start)) return readCamt(text, currency);
  return readBankCsv(text, currency, columns);
}

const START = 1000;
