import { parseSync } from 'ofx-js';
import { isDay } from '../../base/day.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from '../table/amount-text.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { type BankFile, type BankLine, severalAccounts } from './bank-file.ts';

/**
 * A bank statement in OFX (Open Financial Exchange 1.x, which is SGML without end tags, and 2.x,
 * which is XML). A file of several accounts is refused: which is the group's must be said.
 *
 * @param currency ISO 4217 code of the season: amounts of another are refused
 */
export function readOfx(text: string, currency: string): Outcome<BankFile, FileRefusal> {
  let parsed: unknown;
  try {
    parsed = parseSync(text.slice(Math.max(0, text.indexOf('<OFX>') - HEADER_MOST))).OFX;
  } catch {
    return refused({
      line: 0,
      field: 'OFX',
      said: 'tags that do not close',
      wanted: 'an OFX file',
    });
  }
  const statements = findAll(parsed, ['STMTRS', 'CCSTMTRS']);
  if (statements.length === 0) {
    const wanted = 'an account statement (STMTRS)';
    return refused({ line: 0, field: 'OFX', said: 'no statement', wanted });
  }
  const accounts = new Set(statements.flatMap((each) => textsAt(each, ['ACCTID'])));
  if (accounts.size > 1) return refused(severalAccounts([...accounts]));
  const lines: BankLine[] = [];
  let closing: number | undefined;
  for (const statement of statements) {
    const says = textAt(statement, 'CURDEF');
    if (says !== undefined && says !== currency) {
      return refused({ line: 0, field: 'CURDEF', said: says, wanted: currency });
    }
    for (const transaction of findAll(statement, ['STMTTRN'])) {
      const line = bankLine(transaction, lines.length + 1, currency);
      if (!line.ok) return line;
      lines.push(line.value);
    }
    const [ledger] = findAll(statement, ['LEDGERBAL']);
    const balance = amountMinor(textAt(ledger, 'BALAMT') ?? '', currency);
    if (balance !== undefined) closing = balance;
  }
  const [account] = accounts;
  return done({ lines, closing, opening: undefined, currency, account });
}

const HEADER_MOST = 2000;

function bankLine(
  transaction: unknown,
  line: number,
  currency: string,
): Outcome<BankLine, FileRefusal> {
  const posted = textAt(transaction, 'DTPOSTED') ?? '';
  const date = `${posted.slice(0, 4)}-${posted.slice(4, 6)}-${posted.slice(6, 8)}`;
  if (!isDay(date)) {
    return refused({ line, field: 'DTPOSTED', said: posted, wanted: 'a day as YYYYMMDD' });
  }
  const amount = textAt(transaction, 'TRNAMT') ?? '';
  const mark = /,\d{1,2}$/.test(amount) ? ',' : '.';
  const cents = amountMinor(amount, currency, mark);
  if (cents === undefined) {
    return refused({ line, field: 'TRNAMT', said: amount, wanted: `an amount in ${currency}` });
  }
  const words = ['NAME', 'PAYEE', 'MEMO', 'CHECKNUM', 'REFNUM'].flatMap((tag) => {
    const said = textAt(transaction, tag);
    return said === undefined ? [] : [said];
  });
  const kind = textAt(transaction, 'TRNTYPE');
  const text = words.length > 0 ? words.join(' ') : (kind ?? '');
  return done({ line, date, cents, text, reference: textAt(transaction, 'FITID') });
}

/** Every part with one of these names, however deep; a single one is not a list. */
function findAll(part: unknown, names: readonly string[]): unknown[] {
  if (Array.isArray(part)) return part.flatMap((each) => findAll(each, names));
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([name, inner]) => {
    if (!names.includes(name)) return findAll(inner, names);
    return Array.isArray(inner) ? inner : [inner];
  });
}

function textsAt(part: unknown, names: readonly string[]): string[] {
  return findAll(part, names).filter((found) => typeof found === 'string');
}

function textAt(part: unknown, name: string): string | undefined {
  if (typeof part !== 'object' || part === null) return undefined;
  const found: unknown = Reflect.get(part, name);
  if (typeof found === 'string') return found.trim() === '' ? undefined : found.trim();
  return textAt(found, 'NAME');
}
