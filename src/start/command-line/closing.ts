import { closingList } from '../../questions/closing-list.ts';
import { closingWords } from '../../statements/closing-words.ts';
import { english } from '../../words/english.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';

const SIGNS = { done: '✓', open: '▲', 'not-needed': '·' } as const;

export const closing: Command = {
  options: bookOptions,
  takes: ['BOOK'],
  help: `What is left before the season closes, with the cause and what to do next.

  --today DAY   the day on which deadlines are ahead or passed; without it, today
  --json        {"ready":bool,"items":[{"item":"…","state":"done|open|not-needed",…}]}

Exit code: 0 whether or not the season is ready, since the question was answered.

${BOOK_HELP}

Examples
  cratebook closing spring.jsonl
  cratebook closing spring.jsonl --today 2027-04-18 --json`,
  run: async (given, outlet) => {
    const { ledger } = await openBook(given, outlet);
    const { ready, items } = closingList(ledger, outlet.today);
    const lines = items.map((item) => ({
      item,
      words: closingWords(item, ledger, outlet.today, english),
    }));
    if (given.has('json')) {
      const answers = lines.map(({ item, words }) => ({
        item: item.item,
        title: words.title,
        group: item.group,
        state: item.state,
        left: item.left,
        records: item.records,
        ...(words.cause === '' ? {} : { cause: words.cause }),
        next: words.next,
      }));
      await writeJson(outlet, { ready, items: answers });
      return 0;
    }
    for (const { item, words } of lines) {
      const left = words.left === '' ? item.state : words.left;
      await outlet.write(`${SIGNS[item.state]} ${words.title}: ${left}\n`);
      if (item.state !== 'open') continue;
      if (words.cause !== '') await outlet.write(`    ${words.cause}\n`);
      await outlet.write(`    ${words.next}\n`);
    }
    const open = items.filter((item) => item.state === 'open').length;
    await outlet.write(ready ? 'Ready to close.\n' : `${open} open.\n`);
    return 0;
  },
};
