import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { familyAccounts } from '../../questions/family-account.ts';
import { familyStatement } from '../../statements/family-statement.ts';
import { messageOf } from '../message-of.ts';
import type { Command } from './command.ts';
import { BOOK_HELP, bookOptions, openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { contextOf, paperOptions, printed } from './paper-options.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

export const statements: Command = {
  options: {
    ...bookOptions,
    ...paperOptions,
    out: { type: 'string' },
    'as-of': { type: 'string' },
  },
  takes: ['BOOK'],
  help: `Every family's statement as a tagged PDF, one file each, into a folder.

  --out DIR             the folder; made where it is not there
  --as-of DAY           records up to this day count
  --paper a4|letter     the size of the paper (a4)
  --ask NAME            whom families can ask; someone other than the treasurer
  --name NAME           the group's name as printed
  --json                {"files":["…"]}

${BOOK_HELP}

Examples
  cratebook statements spring.jsonl --out statements --ask "Jo Reyes"`,
  run: async (given, outlet) => {
    const folder = given.need('out', 'the folder for the statements');
    const size = given.oneOf('paper', ['a4', 'letter'], 'a4');
    const asOf = given.day('as-of');
    const book = await openBook(given, outlet);
    const accounts = familyAccounts(book.ledger, asOf);
    if (!accounts.ok) throw new Stop('the amounts of the book are too large to add up');
    const context = contextOf(given, book, asOf ?? outlet.today);
    const papers = [...accounts.value.values()].map((account) =>
      familyStatement(account, book.ledger, context),
    );
    makeFolder(folder);
    const { paperPdfs } = await import('../../paper/paper-batch.ts');
    const files: string[] = [];
    await paperPdfs(papers, {
      size,
      each: (paper, outcome, done) => {
        const file = join(folder, `${paper.fileName}.pdf`);
        writeFile(file, [printed(outcome, outlet)]);
        files.push(file);
        outlet.progress(`${done} of ${papers.length} statements`);
      },
    });
    files.sort();
    if (given.has('json')) await writeJson(outlet, { files });
    else outlet.note(`${files.length} statements written to ${folder}`);
    return 0;
  },
};

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new Stop(`${folder}: cannot be made: ${messageOf(error)}`);
  }
}
