import { nearest } from '../../base/nearest.ts';
import { familyAccount } from '../../questions/family-account.ts';
import { familyStatement } from '../../statements/family-statement.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { contextOf, paperOptions, printed } from './paper-options.ts';
import { paperText } from './paper-text.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

export const statement: Command = {
  options: {
    ...bookOptions,
    ...paperOptions,
    family: { type: 'string' },
    'as-of': { type: 'string' },
    pdf: { type: 'string' },
  },
  takes: ['BOOK'],
  help: `One family's statement: what it took, brought back and paid, and what is still to pay.

  --family ID           the family
  --as-of DAY           records up to this day count
  --pdf FILE            write it as a tagged PDF
  --paper a4|letter     the size of the paper (a4)
  --ask NAME            whom the family can ask; someone other than the treasurer
  --name NAME           the group's name as printed
  --json                the account with every line, in minor units

${BOOK_HELP}

Examples
  cratebook statement spring.jsonl --family reyes
  cratebook statement spring.jsonl --family reyes --pdf reyes.pdf --ask "Jo Reyes"`,
  run: async (given, outlet) => {
    const family = given.need('family', 'the id of a family of this book');
    const asOf = given.day('as-of');
    const book = await openBook(given, outlet);
    const { families } = book.ledger.setup;
    if (!families.has(family)) {
      const near = nearest(family, families.keys());
      const mean = near === undefined ? '' : `; did you mean ${near}?`;
      throw new Stop(`--family: the book has no family "${family}"${mean}`);
    }
    const account = familyAccount(book.ledger, family, asOf);
    if (!account.ok) throw new Stop(`--family ${family}: its amounts are too large to add up`);
    const pdf = given.get('pdf');
    if (given.has('json')) await writeJson(outlet, account.value);
    const paper = familyStatement(
      account.value,
      book.ledger,
      contextOf(given, book, asOf ?? outlet.today),
    );
    if (pdf !== undefined) {
      const { paperPdf } = await import('../../paper/paper-pdf.ts');
      const size = given.oneOf('paper', ['a4', 'letter'], 'a4');
      writeFile(pdf, [printed(await paperPdf(paper, { size }), outlet)], given.positionals[0]);
      outlet.note(`Written to ${pdf}`);
    } else if (!given.has('json')) await outlet.write(paperText(paper));
    return 0;
  },
};
