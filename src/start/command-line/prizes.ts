import { prizes as prizesOf } from '../../questions/prizes.ts';
import { sellerName } from '../../statements/account-name.ts';
import type { Command } from './command.ts';
import { BOOK_HELP, bookOptions, openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';
import { textTable } from './text-table.ts';

export const prizes: Command = {
  options: bookOptions,
  takes: ['BOOK'],
  help: `Prize steps that each seller's credit has earned, choices that are missing, what to order.

  --json   {"sellers":[{"seller":id,"credited":n,"steps":[level],"missing":[level]}],"order":[…]}

${BOOK_HELP}

Examples
  cratebook prizes spring.jsonl
  cratebook prizes spring.jsonl --json`,
  run: async (given, outlet) => {
    const { ledger } = await openBook(given, outlet);
    const found = prizesOf(ledger);
    if (given.has('json')) {
      await writeJson(outlet, found);
      return 0;
    }
    const sellers = found.sellers.map((each) => [
      sellerName(ledger.setup, each.seller),
      String(each.credited),
      each.steps.join(', '),
      each.missing.join(', '),
    ]);
    const heads = ['seller', 'units', 'steps earned', 'choice missing'];
    await outlet.write(textTable(heads, sellers, new Set([1])));
    const order = found.order.map((line) => [
      line.level,
      line.prize,
      line.choice ?? '',
      String(line.pieces),
    ]);
    const orderHeads = ['step', 'prize', 'choice', 'pieces'];
    await outlet.write(`\nTo order\n${textTable(orderHeads, order, new Set([3]))}`);
    return 0;
  },
};
