import { type Outcome, refused } from '../../base/outcome.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import type { BankFile } from './bank-file.ts';
import { type BankCsvSaid, readBankCsv } from './read-bank-csv.ts';
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
  said: BankCsvSaid = {},
): Outcome<BankFile, FileRefusal> {
  if (text.length > LONGEST) {
    const size = `${Math.ceil(text.length / MEGA)} million characters`;
    return refused({ line: 0, field: '', said: size, wanted: 'a bank statement' });
  }
  if (text.includes('\0')) {
    const wanted = 'OFX, camt.053 or CSV';
    return refused({ line: 0, field: '', said: 'a file that is no text', wanted });
  }
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text) && /^\s*</.test(text.replace(/^\uFEFF/, ''))) {
    const wanted = 'a statement without: no bank needs one, and they can do harm';
    return refused({ line: 0, field: 'XML', said: 'a document type or entities', wanted });
  }
  const start = text.slice(0, START);
  if (/<OFX>|^\s*OFXHEADER/i.test(start)) return readOfx(text, currency);
  if (/^\s*<(?:\?xml|[\w:]*Document)/.test(start.replace(/^\uFEFF/, ''))) {
    return readCamt(text, currency);
  }
  return readBankCsv(text, currency, said);
}

const START = 4000;
const MEGA = 1_000_000;
/** A season has hundreds of lines; a statement of years stays far below. */
const LONGEST = 30 * MEGA;
