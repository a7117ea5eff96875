import { nearest } from '../../base/nearest.ts';
import { hostReport } from '../../questions/host-report.ts';
import { hostReportPaper } from '../../statements/host-report-paper.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { contextOf, paperOptions, printed } from './paper-options.ts';
import { paperText } from './paper-text.ts';
import { Stop } from './stop.ts';
import { writeFile } from './write-file.ts';

export const host: Command = {
  options: { ...bookOptions, ...paperOptions, host: { type: 'string' }, pdf: { type: 'string' } },
  takes: ['BOOK'],
  help: `What a host shop's stalls sold over the season: stalls, hours, units and value by
product, on one page for the shop. No seller and no family is named.

  --host ID             the host shop
  --pdf FILE            write it as a tagged PDF
  --paper a4|letter     the size of the paper (a4)
  --name NAME           the group's name as printed
  --json                {"host":id,"stalls":[…],"products":[…],"minutes":n,"units":n,"value":minor}

${BOOK_HELP}

Examples
  cratebook host spring.jsonl --host market
  cratebook host spring.jsonl --host market --pdf market.pdf`,
  run: async (given, outlet) => {
    const id = given.need('host', 'the id of a host shop of this book');
    const book = await openBook(given, outlet);
    const paper = hostReportPaper(book.ledger, id, contextOf(given, book, outlet.today));
    if (!paper.ok) {
      const near = nearest(id, book.ledger.setup.hosts.keys());
      const mean = near === undefined ? '' : `; did you mean ${near}?`;
      throw new Stop(`--host: the book has no host shop "${id}"${mean}`);
    }
    const pdf = given.get('pdf');
    if (given.has('json')) await writeJson(outlet, hostReport(book.ledger, id));
    if (pdf !== undefined) {
      const { paperPdf } = await import('../../paper/paper-pdf.ts');
      const size = given.oneOf('paper', ['a4', 'letter'], 'a4');
      const made = await paperPdf(paper.value, { size });
      writeFile(pdf, [printed(made, outlet)], given.positionals[0]);
      outlet.note(`Written to ${pdf}`);
    } else if (!given.has('json')) await outlet.write(paperText(paper.value));
    return 0;
  },
};
