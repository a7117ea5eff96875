import type { Ledger } from '../../ledger/ledger.ts';
import { type Prizes, prizes as prizesOf } from '../../questions/prizes.ts';
import { sellerName } from '../../statements/account-name.ts';
import { handOutPaper } from '../../statements/hand-out-paper.ts';
import type { Paper } from '../../statements/paper.ts';
import { prizeOrderPaper } from '../../statements/prize-order-paper.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import { contextOf, paperOptions, printed } from './paper-options.ts';
import type { Arguments } from './read-arguments.ts';
import { textTable } from './text-table.ts';
import { writeFile } from './write-file.ts';

export const prizes: Command = {
  options: {
    ...bookOptions,
    ...paperOptions,
    'order-pdf': { type: 'string' },
    'hand-out-pdf': { type: 'string' },
  },
  takes: ['BOOK'],
  help: `Prize steps that each seller's credit has earned, choices that are missing, what to order.
What is ordered counts on confirmed credit: not on share-outs of a stall that is not settled.

  --order-pdf FILE      the order by prize and choice as a tagged PDF
  --hand-out-pdf FILE   the list with which prizes are handed out, to be ticked on paper
  --paper a4|letter     the size of the paper (a4)
  --name NAME           the group's name as printed
  --json                {"sellers":[{"seller":id,"credited":n,"steps":[level],"missing":[level],…}],
                        "order":[{"level":id,"prize":"…","choice":"…"?,"pieces":n}],…}; further
                        keys: confirmed, pending, sure (steps of confirmed credit), forgone,
                        notReached (chosen, and the credit is not there), notShared (by pool)

${BOOK_HELP}

Examples
  cratebook prizes spring.jsonl
  cratebook prizes spring.jsonl --json
  cratebook prizes spring.jsonl --order-pdf order.pdf --hand-out-pdf list.pdf`,
  run: async (given, outlet) => {
    const book = await openBook(given, outlet);
    const found = prizesOf(book.ledger);
    const context = contextOf(given, book, outlet.today);
    const papers = [
      ['order-pdf', () => prizeOrderPaper(book.ledger, context)],
      ['hand-out-pdf', () => handOutPaper(book.ledger, context)],
    ] as const;
    for (const [option, paper] of papers) await writePaper(given, option, paper, outlet);
    if (given.has('json')) await writeJson(outlet, found);
    else if (papers.every(([option]) => given.get(option) === undefined)) {
      await outlet.write(tablesOf(found, book.ledger));
    }
    return 0;
  },
};

async function writePaper(
  given: Arguments,
  option: string,
  paper: () => Paper,
  outlet: Outlet,
): Promise<void> {
  const file = given.get(option);
  if (file === undefined) return;
  const { paperPdf } = await import('../../paper/paper-pdf.ts');
  const size = given.oneOf('paper', ['a4', 'letter'], 'a4');
  writeFile(file, [printed(await paperPdf(paper(), { size }), outlet)], given.positionals[0]);
  outlet.note(`Written to ${file}`);
}

function tablesOf(found: Prizes, ledger: Ledger): string {
  const sellers = found.sellers.map((each) => [
    sellerName(ledger.setup, each.seller),
    String(each.credited),
    String(each.confirmed),
    each.steps.join(', '),
    each.missing.join(', '),
    each.forgone.join(', '),
    each.notReached.join(', '),
  ]);
  const heads = [
    'seller',
    'units',
    'confirmed',
    'steps earned',
    'choice missing',
    'no prize',
    'chosen, not reached',
  ];
  const order = found.order.map((line) => [
    line.level,
    line.prize,
    line.choice ?? '',
    String(line.pieces),
  ]);
  const orderHeads = ['step', 'prize', 'choice', 'pieces'];
  const notShared = Object.entries(found.notShared)
    .map(([pool, units]) => `${units} units not yet shared: ${pool}\n`)
    .join('');
  return (
    `${textTable(heads, sellers, new Set([1, 2]))}\n` +
    `To order\n${textTable(orderHeads, order, new Set([3]))}${notShared}`
  );
}
