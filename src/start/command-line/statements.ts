import { mkdirSync } from 'node:fs';
import { join, parse } from 'node:path';
import type { PaperSize } from '../../paper/paper-printer.ts';
import { familyAccounts } from '../../questions/family-account.ts';
import { familyStatement, statementsCover } from '../../statements/family-statement.ts';
import type { Paper } from '../../statements/paper.ts';
import { messageOf } from '../message-of.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import { contextOf, paperOptions, printed } from './paper-options.ts';
import type { Arguments } from './read-arguments.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

export const statements: Command = {
  options: {
    ...bookOptions,
    ...paperOptions,
    out: { type: 'string' },
    together: { type: 'string' },
    'as-of': { type: 'string' },
  },
  takes: ['BOOK'],
  help: `Every family's statement as a tagged PDF: one file each into a folder, or all of them in
one file for printing, each family on sheets of its own (also when printed on both sides).

  --out DIR             the folder; made where it is not there
  --together FILE       all of them in one PDF; beyond 200 families FILE-1, FILE-2 and so on
  --as-of DAY           records up to this day count
  --paper a4|letter     the size of the paper (a4)
  --ask NAME            whom families can ask; someone other than the treasurer
  --name NAME           the group's name as printed
  --json                {"files":["…"]}

${BOOK_HELP}

Examples
  cratebook statements spring.jsonl --out statements --ask "Jo Reyes"
  cratebook statements spring.jsonl --together statements.pdf --paper letter`,
  run: async (given, outlet) => {
    const folder = given.get('out');
    const together = given.get('together');
    if (folder === undefined && together === undefined) {
      throw new Stop('--out is missing: the folder for the statements; or --together FILE');
    }
    const job = await jobOf(given, outlet);
    const files = [
      ...(folder === undefined ? [] : await writeEach(job, folder, outlet)),
      ...(together === undefined ? [] : await writeTogether(job, together, given, outlet)),
    ];
    if (given.has('json')) await writeJson(outlet, { files });
    else
      outlet.note(
        `${job.count} statements written to ${[folder, together].filter(isSaid).join(' and ')}`,
      );
    return 0;
  },
};

/** What is printed: the papers are made one by one while earlier ones are printed. */
interface StatementsJob {
  readonly papers: () => Iterable<Paper>;
  readonly count: number;
  readonly title: string;
  readonly language: string;
  readonly size: PaperSize;
}

async function jobOf(given: Arguments, outlet: Outlet): Promise<StatementsJob> {
  const size = given.oneOf('paper', ['a4', 'letter'], 'a4');
  const asOf = given.day('as-of');
  const book = await openBook(given, outlet);
  const accounts = familyAccounts(book.ledger, asOf);
  if (!accounts.ok) throw new Stop('the amounts of the book are too large to add up');
  const context = contextOf(given, book, asOf ?? outlet.today);
  return {
    papers: function* () {
      for (const account of accounts.value.values()) {
        yield familyStatement(account, book.ledger, context);
      }
    },
    count: accounts.value.size,
    ...statementsCover(book.ledger, context),
    size,
  };
}

async function writeEach(job: StatementsJob, folder: string, outlet: Outlet): Promise<string[]> {
  makeFolder(folder);
  const { paperPdfs } = await import('../../paper/paper-batch.ts');
  const files: string[] = [];
  await paperPdfs(job.papers(), {
    size: job.size,
    each: (paper, outcome, done) => {
      const file = join(folder, `${paper.fileName}.pdf`);
      writeFile(file, [printed(outcome, outlet)]);
      files.push(file);
      outlet.progress(`${done} of ${job.count} statements`);
    },
  });
  return files.sort();
}

async function writeTogether(
  job: StatementsJob,
  file: string,
  given: Arguments,
  outlet: Outlet,
): Promise<string[]> {
  const { papersTogether } = await import('../../paper/paper-batch.ts');
  const { title, language, size } = job;
  const made = await papersTogether([...job.papers()], {
    size,
    title,
    language,
    fileName: 'statements',
  });
  return made.map((outcome, part) => {
    const partFile = made.length === 1 ? file : numbered(file, part + 1);
    writeFile(partFile, [printed(outcome, outlet)], given.positionals[0]);
    return partFile;
  });
}

/** `all.pdf` as `all-2.pdf`. */
function numbered(file: string, number: number): string {
  const { dir, name, ext } = parse(file);
  return join(dir, `${name}-${number}${ext}`);
}

function isSaid(text: string | undefined): boolean {
  return text !== undefined;
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new Stop(`${folder}: cannot be made: ${messageOf(error)}`);
  }
}
