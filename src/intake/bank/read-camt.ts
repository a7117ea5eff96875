import { isDay } from '../../base/day.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from '../table/amount-text.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { type XmlElement, xmlTree } from '../table/xml-tree.ts';
import { type BankFile, type BankLine, severalAccounts } from './bank-file.ts';

/**
 * A bank statement in camt.053 (ISO 20022 BankToCustomerStatement, any version). Entries of a file
 * with several statements of one account come in order; the last closing booked balance (CLBD) is
 * the balance. Lines count all entries; those that are not booked yet are left out.
 *
 * @param currency ISO 4217 code of the season: entries in another are refused
 */
export function readCamt(text: string, currency: string): Outcome<BankFile, FileRefusal> {
  const top = xmlTree(text);
  if (top === undefined) {
    const said = 'tags that do not close';
    return refused({ line: 0, field: 'XML', said, wanted: 'a camt.053 file' });
  }
  const message = partAt(top, 'Document', 'BkToCstmrStmt');
  const statements = partsOf(message, 'Stmt');
  if (statements.length === 0) {
    const wanted = 'a statement (BkToCstmrStmt)';
    return refused({ line: 0, field: 'Document', said: 'no statement', wanted });
  }
  const accounts = new Set(statements.flatMap((each) => accountOf(each) ?? []));
  if (accounts.size > 1) return refused(severalAccounts([...accounts]));
  const lines: BankLine[] = [];
  const entries = statements.flatMap((statement) => partsOf(statement, 'Ntry'));
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

function accountOf(statement: XmlElement): string | undefined {
  const id = partAt(statement, 'Acct', 'Id');
  return textAt(id, 'IBAN') ?? textAt(id, 'Othr', 'Id');
}

/** What is only announced or under way has not moved any money yet. */
function isBooked(entry: XmlElement): boolean {
  return (textAt(entry, 'Sts') ?? textAt(entry, 'Sts', 'Cd') ?? 'BOOK') === 'BOOK';
}

function bankLine(
  entry: XmlElement,
  line: number,
  currency: string,
): Outcome<BankLine, FileRefusal> {
  const amount = textAt(entry, 'Amt') ?? '';
  const inCurrency = partAt(entry, 'Amt')?.attributes.Ccy ?? currency;
  const minor = amountMinor(amount, currency);
  if (minor === undefined || inCurrency !== currency) {
    const said = `${amount} ${inCurrency}`.trim();
    return refused({ line, field: 'Amt', said, wanted: `an amount in ${currency}` });
  }
  const day = dayAt(entry, 'BookgDt') ?? dayAt(entry, 'ValDt') ?? '';
  const date = day.slice(0, 10);
  if (!isDay(date)) {
    return refused({ line, field: 'BookgDt', said: day, wanted: 'a day as YYYY-MM-DD' });
  }
  const isOut = textAt(entry, 'CdtDbtInd') === 'DBIT';
  const reference = textAt(entry, 'AcctSvcrRef') ?? textAt(entry, 'NtryRef');
  const told = TOLD.flatMap((name) => everyText(entry, name));
  const text = [...new Set(told)].join(' ');
  return done({ line, date, cents: isOut ? 0 - minor : minor, text, reference });
}

/** Where an entry says in words who and what for. */
const TOLD = ['AddtlNtryInf', 'Nm', 'Ustrd', 'EndToEndId', 'ChqNb'];

function dayAt(entry: XmlElement, name: string): string | undefined {
  return textAt(entry, name, 'Dt') ?? textAt(entry, name, 'DtTm') ?? textAt(entry, name);
}

function balanceOf(
  statement: XmlElement | undefined,
  codes: readonly string[],
  currency: string,
): number | undefined {
  for (const code of codes) {
    for (const balance of partsOf(statement, 'Bal')) {
      if (textAt(balance, 'Tp', 'CdOrPrtry', 'Cd') !== code) continue;
      const minor = amountMinor(textAt(balance, 'Amt') ?? '', currency);
      if (minor === undefined) continue;
      return textAt(balance, 'CdtDbtInd') === 'DBIT' ? 0 - minor : minor;
    }
  }
  return undefined;
}

function partsOf(element: XmlElement | undefined, name: string): XmlElement[] {
  return element?.parts.filter((part) => part.name === name) ?? [];
}

/** The part at a path; of several the first. */
function partAt(
  element: XmlElement | undefined,
  ...path: readonly string[]
): XmlElement | undefined {
  return path.reduce<XmlElement | undefined>(
    (found, name) => found?.parts.find((part) => part.name === name),
    element,
  );
}

/** The text at a path, without spaces around it; undefined where there is none. */
function textAt(element: XmlElement | undefined, ...path: readonly string[]): string | undefined {
  const text = partAt(element, ...path)?.text.trim();
  return text === '' ? undefined : text;
}

function everyText(element: XmlElement, name: string): string[] {
  return element.parts.flatMap((part) => {
    const own = part.name === name ? part.text.trim() : '';
    return own === '' ? everyText(part, name) : [own];
  });
}
