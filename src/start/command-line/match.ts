import { readFileSync } from 'node:fs';
import type { Outcome } from '../../base/outcome.ts';
import { readBankColumns } from '../../intake/bank/read-bank-columns.ts';
import { readBankFile } from '../../intake/bank/read-bank-file.ts';
import { type Finding, findingLine, shortSaid } from '../../intake/finding.ts';
import { readSupplierColumns } from '../../intake/supplier/read-supplier-columns.ts';
import { readSupplierFile } from '../../intake/supplier/read-supplier-file.ts';
import { type DayOrder, dayOrders } from '../../intake/table/day-cell.ts';
import type { FileRefusal } from '../../intake/table/file-refusal.ts';
import { fileText } from '../../intake/table/file-text.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { matchBank } from '../../questions/match/match-bank.ts';
import { matchSupplier } from '../../questions/match/match-supplier.ts';
import { messageOf } from '../message-of.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { bankMatchJson, bankMatchText } from './match-bank-answer.ts';
import { supplierMatchJson, supplierMatchText } from './match-supplier-answer.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';

export const match: Command = {
  options: {
    ...bookOptions,
    bank: { type: 'string' },
    supplier: { type: 'string' },
    columns: { type: 'string' },
    days: { type: 'string' },
  },
  takes: ['BOOK'],
  help: `The bank's or the supplier's statement against the book: what agrees, what only one has.

  --bank FILE       OFX 1.x or 2.x, camt.053, or CSV
  --supplier FILE   CSV or XLSX with lines for deliveries, swaps, debits, card credits, orders
  --columns FILE    which columns of a table to take, as JSON; without it they are guessed:
                    {"date":"Posted","amount":"Amount","text":["Memo"],"days":"month-day-year",
                     "decimals":"."} and, where there are any, "paidIn", "paidOut", "direction",
                    "reference", "balance"; of a supplier's: "date", "words" (columns that say
                    what sort of line it is), "product", "units", "cases", "amount", "charge",
                    "credit", "reference", "neighbour", "balance", "days", "decimals"
  --days ORDER      how a table writes its days where that cannot be told from them:
                    month-day-year or day-month-year
  --json            {"matched":[{"line":n,"records":[id],"reason":"…","sure":bool}],
                    "unmatchedLines":[n],"unmatchedRecords":[id],"bookBalance":minor,
                    "bankBalance":minor,"outstanding":minor}

line counts the statement's own lines from 1. sure: exact in amount and day, and nothing else that
it could be; everything else is for a person to look at. differ: pairs that are about the same
thing and do not agree; they stay among what is unmatched. missing: records that would stand for a
line that only the statement has. outstanding: what the records that only the book has come to.
With --supplier, balances are of the supplier's account, minus where the group owes.

Exit code: 0 all matched, 1 something on either side has no match, 2 unusable input.

${BOOK_HELP}

Examples
  cratebook match spring.jsonl --bank march.ofx
  cratebook match spring.jsonl --supplier statement.csv --json`,
  run: async (given, outlet) => {
    const bank = given.get('bank');
    const supplier = given.get('supplier');
    const days = daysOf(given);
    if (bank !== undefined && supplier === undefined) {
      return answerBank(given, outlet, bank, days);
    }
    if (supplier !== undefined && bank === undefined) {
      return answerSupplier(given, outlet, supplier, days);
    }
    throw new Stop('wanted either --bank FILE or --supplier FILE');
  },
};

async function answerBank(
  given: Arguments,
  outlet: Outlet,
  path: string,
  days: DayOrder | undefined,
): Promise<number> {
  const columns = columnsOf(given, readBankColumns);
  const { ledger } = await openBook(given, outlet);
  const file = readBankFile(fileText(bytesOf(path)), currencyOf(ledger), { columns, days });
  if (!file.ok) throw new Stop(refusalLine(file.refusal, path));
  const found = matchBank(ledger, file.value);
  if (given.has('json')) await writeJson(outlet, bankMatchJson(found, file.value, ledger));
  else await outlet.write(bankMatchText(found, file.value, ledger));
  return codeOf(found);
}

async function answerSupplier(
  given: Arguments,
  outlet: Outlet,
  path: string,
  days: DayOrder | undefined,
): Promise<number> {
  const columns = columnsOf(given, readSupplierColumns);
  const { ledger } = await openBook(given, outlet);
  const said = { columns, days };
  const file = await readSupplierFile(bytesOf(path), currencyOf(ledger), ledger.setup, said);
  if (!file.ok) throw new Stop(refusalLine(file.refusal, path));
  const found = matchSupplier(ledger, file.value);
  if (given.has('json')) await writeJson(outlet, supplierMatchJson(found, ledger));
  else await outlet.write(supplierMatchText(found, file.value, ledger));
  return codeOf(found);
}

function codeOf(found: {
  readonly unmatchedLines: readonly unknown[];
  readonly unmatchedRecords: readonly unknown[];
}): number {
  return found.unmatchedLines.length + found.unmatchedRecords.length === 0 ? 0 : 1;
}

function daysOf(given: Arguments): DayOrder | undefined {
  const said = given.get('days');
  const days = dayOrders.find((order) => order === said);
  if (said === undefined || days !== undefined) return days;
  throw new Stop(`--days: said ${shortSaid(said)}, wanted ${dayOrders.join(', ')}`);
}

/** The saved columns that `--columns` names, read as one of the two kinds of file has them. */
function columnsOf<C>(given: Arguments, read: (text: string) => Outcome<C, Finding>) {
  const path = given.get('columns');
  if (path === undefined) return undefined;
  const columns = read(fileText(bytesOf(path)));
  if (!columns.ok) throw new Stop(findingLine(columns.refusal, path));
  return columns.value;
}

function currencyOf(ledger: Ledger): string {
  return ledger.setup.season?.currency ?? 'USD';
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
