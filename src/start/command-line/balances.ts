import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { setEngineForQuickReading } from './engine.ts';
import { writeJson } from './outlet.ts';
import { startParts } from './part-threads.ts';

export const balances: Command = {
  options: { ...bookOptions, 'as-of': { type: 'string' } },
  takes: ['BOOK'],
  help: `What every account holds: stock and credit in units, money in the season's currency.

  --as-of DAY   at the end of that day (YYYY-MM-DD), at its prices
  --json        {"stock":{product:{account:units}},"money":{account:minor},"credit":{…}}

${BOOK_HELP}

Examples
  cratebook balances spring.jsonl
  cratebook balances spring.jsonl --as-of 2027-03-01 --json`,
  run: async (given, outlet) => {
    const day = given.day('as-of');
    const [path = ''] = given.positionals;
    // Figures alone are said without the names of things.
    const withNames = !given.has('json');
    const parts = startParts(path, withNames);
    // Where other threads read too, the first of them sets it once it is there.
    if (parts === undefined) setEngineForQuickReading(true);
    const { openBalances } = await import('./open-balances.ts');
    const book = await openBalances(given, outlet, withNames, parts, day);
    if (given.has('json')) await writeJson(outlet, book.balances.toAccounts());
    else {
      // Words come only where they are said: programs ask for large books, and want them at once.
      const { balancesText } = await import('./balances-text.ts');
      await outlet.write(balancesText(book));
    }
    return 0;
  },
};
