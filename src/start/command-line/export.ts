import { writeBook } from '../../intake/write-book.ts';
import type { AcceptedBook } from '../../rules/accept-book.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeAll } from './outlet.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

const FORMATS = ['accounts', 'csv', 'xlsx', 'book'] as const;

export const exportBook: Command = {
  options: { ...bookOptions, to: { type: 'string' }, out: { type: 'string' } },
  takes: ['BOOK'],
  help: `A book in a form that other programs read, to standard output or a file.

  --to accounts   a plain-text double-entry journal that independent ledgers read
  --to csv        every record, a row for each line, for a spreadsheet
  --to xlsx       a workbook: records, balances, families
  --to book       a book file (JSON Lines), as from a store
  --out FILE      write it to this file

${BOOK_HELP}

Examples
  cratebook export spring.jsonl --to accounts > spring.journal
  cratebook export spring.jsonl --to xlsx --out spring.xlsx`,
  run: async (given, outlet) => {
    given.need('to', `one of ${FORMATS.join(', ')}`);
    const format = given.oneOf('to', FORMATS, 'accounts');
    const out = given.get('out');
    if (format === 'xlsx' && out === undefined && outlet.isScreen) {
      throw new Stop('a workbook is not for the screen; say --out FILE');
    }
    const book = await openBook(given, outlet);
    await put(await piecesOf(format, book), out, given.positionals[0], outlet);
    return 0;
  },
};

async function put(
  pieces: Iterable<string> | Uint8Array,
  out: string | undefined,
  book: string | undefined,
  outlet: Outlet,
): Promise<void> {
  if (out !== undefined) {
    writeFile(out, pieces instanceof Uint8Array ? [pieces] : pieces, book);
    outlet.note(`Written to ${out}`);
  } else if (pieces instanceof Uint8Array) await outlet.write(pieces);
  else await writeAll(outlet, pieces);
}

async function piecesOf(
  format: (typeof FORMATS)[number],
  book: AcceptedBook,
): Promise<Iterable<string> | Uint8Array> {
  switch (format) {
    case 'accounts': {
      const { exportAccounts } = await import('../../statements/export-accounts.ts');
      return exportAccounts(book.header, book.ledger);
    }
    case 'csv': {
      const { exportCsv } = await import('../../statements/export-csv.ts');
      return exportCsv(book.ledger);
    }
    case 'book':
      return writeBook(book.header, book.records);
    case 'xlsx':
      return workbook(book);
  }
}

async function workbook(book: AcceptedBook): Promise<Uint8Array> {
  const { workbookSheets } = await import('../../statements/export-xlsx.ts');
  const { workbookBytes } = await import('../../paper/workbook-bytes.ts');
  const sheets = workbookSheets(book.ledger);
  if (!sheets.ok) {
    const { most } = sheets.refusal;
    throw new Stop(`the book has more than ${most} rows, too many for a workbook; use --to csv`);
  }
  return workbookBytes(sheets.value);
}
