import { XMLParser } from 'fast-xml-parser';
import { isDay } from '../../base/day.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from '../table/amount-text.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { type BankFile, type BankLine, severalAccounts } from './bank-file.ts';

/**
 * A bank statement in camt.053 (ISO 20022 BankToCustomerStatement, any version). Entries of a file
 * with several statements come in order; the last closing booked balance (CLBD) is the balance.
 *
 * @param currency ISO 4217 code of the season: entries in another are refused
 */
export function readCamt(text: string, currency: string): Outcome<BankFile, FileRefusal> {
  let parsed: unknown;
  try {
    parsed = PARSER.parse(text, true);
  } catch {
    return refused({
      line: 0,
      field: 'XML',
      said: 'tags that do not close',
      wanted: 'a camt.053 file',
    });
  }
  const statements = all(at(parsed, 'Document', 'BkToCstmrStmt', 'Stmt'));
  if (statements.length === 0) {
    const wanted = 'a statement (BkToCstmrStmt)';
    return refused({ line: 0, field: 'Document', said: 'no statement', wanted });
  }
  const accounts = new Set(statements.flatMap((each) => accountOf(each) ?? []));
  if (accounts.size > 1) return refused(severalAccounts([...accounts]));
  const lines: BankLine[] = [];
  const entries = statements.flatMap((statement) => all(at(statement, 'Ntry')));
  for (const [index, entry] of entries.entries()) {
    const line = bankLine(entry, index + 1, currency);
    if (!line.ok) return line;
    if (isBooked(entry)) lines.push(line.value);
  }
  const opening = balanceOf(statements[0], ['OPBD', 'PRCD'], currency);
  const closing = balanceOf(statements.at(-1), ['CLBD'], currency);
  const [account] = accounts;
  return done({ lines, opening, closing, currency, account });
}

const PARSER = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  parseTagValue: false,
  // A bank's file needs none, and expanding them is how such files do harm.
  processEntities: { enabled: true, maxTotalExpansions: 10_000 },
  removeNSPrefix: true,
});

function accountOf(statement: unknown): string | undefined {
  const id = at(statement, 'Acct', 'Id');
  return textOf(at(id, 'IBAN')) ?? textOf(at(id, 'Othr', 'Id'));
}

/** What is only announced or under way has not moved any money yet. */
function isBooked(entry: unknown): boolean {
  const status = textOf(at(entry, 'Sts')) ?? textOf(at(entry, 'Sts', 'Cd')) ?? 'BOOK';
  return status === 'BOOK';
}

function bankLine(entry: unknown, line: number, currency: string): Outcome<BankLine, FileRefusal> {
  const amount = amountOf(at(entry, 'Amt'));
  const minor = amountMinor(amount.text, currency);
  if (minor === undefined || (amount.currency !== undefined && amount.currency !== currency)) {
    const said = `${amount.text} ${amount.currency ?? ''}`.trim();
    return refused({ line, field: 'Amt', said, wanted: `an amount in ${currency}` });
  }
  const day = textOf(at(entry, 'BookgDt')) ?? textOf(at(entry, 'ValDt')) ?? '';
  const date = day.slice(0, 10);
  if (!isDay(date)) {
    return refused({ line, field: 'BookgDt', said: day, wanted: 'a day as YYYY-MM-DD' });
  }
  const isOut = textOf(at(entry, 'CdtDbtInd')) === 'DBIT';
  const reference = textOf(at(entry, 'AcctSvcrRef')) ?? textOf(at(entry, 'NtryRef'));
  const told = TOLD.flatMap((name) => everyText(entry, name));
  const text = [...new Set(told)].join(' ');
  return done({ line, date, cents: isOut && minor !== 0 ? -minor : minor, text, reference });
}

/** Where an entry says in words who and what for. */
const TOLD = ['AddtlNtryInf', 'Nm', 'Ustrd', 'EndToEndId', 'ChqNb'];

function balanceOf(statement: unknown, codes: readonly string[], currency: string) {
  for (const code of codes) {
    for (const balance of all(at(statement, 'Bal'))) {
      if (textOf(at(balance, 'Tp', 'CdOrPrtry', 'Cd')) !== code) continue;
      const minor = amountMinor(amountOf(at(balance, 'Amt')).text, currency);
      if (minor === undefined) continue;
      return textOf(at(balance, 'CdtDbtInd')) === 'DBIT' ? 0 - minor : minor;
    }
  }
  return undefined;
}

function amountOf(part: unknown): { text: string; currency: string | undefined } {
  const said: unknown =
    typeof part === 'object' && part !== null ? Reflect.get(part, '@Ccy') : undefined;
  return { text: textOf(part) ?? '', currency: typeof said === 'string' ? said : undefined };
}

/** The part at a path; of several the first. */
function at(part: unknown, ...path: readonly string[]): unknown {
  let found = part;
  for (const name of path) {
    const [first] = all(found);
    found = typeof first === 'object' && first !== null ? Reflect.get(first, name) : undefined;
  }
  return found;
}

function all(part: unknown): unknown[] {
  if (part === undefined) return [];
  return Array.isArray(part) ? part : [part];
}

/** The text of an element, with or without attributes, or of the day inside it. */
function textOf(part: unknown): string | undefined {
  const [first] = all(part);
  if (typeof first === 'string') return first.trim() === '' ? undefined : first.trim();
  if (typeof first !== 'object' || first === null) return undefined;
  return textOf(
    Reflect.get(first, '#text') ?? Reflect.get(first, 'Dt') ?? Reflect.get(first, 'DtTm'),
  );
}

function everyText(part: unknown, name: string): string[] {
  if (Array.isArray(part)) return part.flatMap((each) => everyText(each, name));
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([key, inner]) => {
    if (key !== name) return everyText(inner, name);
    return all(inner).flatMap((each) => textOf(each) ?? []);
  });
}
