import { readFileSync } from 'node:fs';
import type { BankFile, FileRefusal } from '../../intake/bank/bank-file.ts';
import type { BankColumns } from '../../intake/bank/csv-columns.ts';
import { readBankColumns } from '../../intake/bank/read-bank-columns.ts';
import { readBankFile } from '../../intake/bank/read-bank-file.ts';
import { findingLine, shortSaid } from '../../intake/finding.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type BankMatch, matchBank } from '../../questions/match/match-bank.ts';
import { matchWords } from '../../statements/match-words.ts';
import { moneyText } from '../../statements/money-text.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { messageOf } from '../message-of.ts';
import type { Command } from './command.ts';
import { BOOK_HELP, bookOptions, openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';

export const match: Command = {
  options: {
    ...bookOptions,
    bank: { type: 'string' },
    columns: { type: 'string' },
  },
  takes: ['BOOK'],
  help: `The bank's statement against the book: what agrees, what only one has.

  --bank FILE       OFX 1.x or 2.x, camt.053, or CSV
  --columns FILE    which columns of a CSV to take, as JSON; without it they are guessed:
                    {"date":"Posted","amount":"Amount","text":["Memo"],"days":"month-day-year",
                     "decimals":"."} and, where there are any, "paidIn", "paidOut", "balance"
  --json            {"matched":[{"line":n,"records":[id],"reason":"…","sure":bool}],
                    "unmatchedLines":[n],"unmatchedRecords":[id],"bookBalance":minor,
                    "bankBalance":minor,"outstanding":minor}

line counts the statement's own lines from 1. sure: exact in amount and day, and nothing else that
it could be; everything else is for a person to look at. outstanding: what the unmatched records
come to.

Exit code: 0 all matched, 1 something on either side has no match, 2 unusable input.

${BOOK_HELP}

Examples
  cratebook match spring.jsonl --bank march.ofx`,
  run: async (given, outlet) => {
    const bank = given.get('bank');
    if (bank === undefined) throw new Stop('wanted --bank FILE');
    const { ledger } = await openBook(given, outlet);
    return answerBank(given, outlet, ledger, bank);
  },
};

async function answerBank(given: Arguments, outlet: Outlet, ledger: Ledger, path: string) {
  const file = readBankFile(textOf(path), currencyOf(ledger), columnsOf(given));
  if (!file.ok) throw new Stop(refusalLine(file.refusal, path));
  const found = matchBank(ledger, file.value);
  if (given.has('json')) await writeJson(outlet, jsonOf(found));
  else await outlet.write(bankText(found, file.value, ledger));
  return codeOf(found);
}

/** The parts that the spec names, with the reasons in words. */
function jsonOf(found: BankMatch) {
  const matched = found.matched.map(({ line, records, why, sure }) => ({
    line,
    records,
    reason: matchWords(why),
    sure,
  }));
  return { ...found, matched };
}

function bankText(found: BankMatch, file: BankFile, ledger: Ledger): string {
  const currency = currencyOf(ledger);
  const money = (minor: number) => moneyText(minor, currency);
  const lineAt = (line: number) => file.lines[line - 1];
  const lineText = (line: number) => {
    const { date = '', cents = 0, text = '' } = lineAt(line) ?? {};
    return `line ${line}  ${date}  ${money(cents)}  ${text}`.trimEnd();
  };
  const recordText = (id: string) => {
    const record = ledger.standing.get(id);
    if (record === undefined) return id;
    return `${'date' in record ? record.date : ''}  ${recordSentence(record, ledger)}`;
  };
  const rows = found.matched.flatMap(({ line, records, why, sure }) => [
    `${sure ? '✓' : '?'} ${lineText(line)}`,
    ...records.map((id) => `      ${recordText(id)}`),
    ...(sure ? [] : [`      ${matchWords(why)}`]),
  ]);
  const part = (title: string, items: readonly string[]) =>
    items.length === 0 ? [] : ['', title, ...items.map((item) => `▲ ${item}`)];
  return `${[
    ...rows,
    ...part('Only at the bank', found.unmatchedLines.map(lineText)),
    ...part('Only in the book', found.unmatchedRecords.map(recordText)),
    '',
    `By the book ${money(found.bookBalance)}`,
    `less what is not yet at the bank ${money(found.outstanding)}`,
    `and what is not yet in the book ${money(found.notInBook)}`,
    `By the bank ${money(found.bankBalance)}`,
  ].join('\n')}\n`;
}

function codeOf(found: Pick<BankMatch, 'unmatchedLines' | 'unmatchedRecords'>): number {
  return found.unmatchedLines.length + found.unmatchedRecords.length === 0 ? 0 : 1;
}

function columnsOf(given: Arguments): BankColumns | undefined {
  const path = given.get('columns');
  if (path === undefined) return undefined;
  const read = readBankColumns(textOf(path));
  if (!read.ok) throw new Stop(findingLine(read.refusal, path));
  return read.value;
}

function currencyOf(ledger: Ledger): string {
  return ledger.setup.season?.currency ?? 'USD';
}

/** Banks still write Windows-1252 (the OFX header says so); anything that is not UTF-8 is that. */
function textOf(path: string): string {
  const bytes = bytesOf(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new Stop(`${path}: cannot be read: ${messageOf(error)}`);
  }
}

function refusalLine({ line, field, said, wanted }: FileRefusal, path: string): string {
  const where = [path, ...(line > 0 ? [`line ${line}`] : []), ...(field === '' ? [] : [field])];
  return `${where.join(', ')}: said ${shortSaid(said)}, wanted ${wanted}`;
}
