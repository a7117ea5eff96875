import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import { readLine as read } from '../../intake/one-line/read-line.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { lineNames } from '../../questions/line-names.ts';
import { workingDay } from '../../questions/working-day.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { english } from '../../words/english.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { writeJson } from './outlet.ts';

export const readLine: Command = {
  options: bookOptions,
  takes: ['BOOK', 'LINE'],
  help: `How the app reads a line of text as a record of this book. Nothing is written to the book.
Ends with 0 where one reading is possible, with 1 where there are several or none.

  --today DAY   the day that counts as today; without it, today
  --json        {"readings":[{"sentence":"…","record":{…}}],
                 "wanted":[{"name":"…","said":"…","wanted":"…","nearest":"…"?}]}

${BOOK_HELP}

Examples
  cratebook read-line spring.jsonl "ada out 12 honey 6 jam"
  cratebook read-line spring.jsonl "pago ada 40 efectivo ayer" --json`,
  run: async (given, outlet) => {
    const { ledger } = await openBook(given, outlet);
    const answer = read(given.positionals[1] ?? '', {
      ...lineNames(ledger),
      today: workingDay(ledger, outlet.today),
      currency: ledger.setup.season?.currency ?? '',
      receipt: '',
    });
    const records = answer.ok ? answer.value : [];
    const wanted = answer.ok ? [] : answer.refusal;
    const readings = records.map((record) => ({ sentence: sentenceOf(record, ledger), record }));
    if (given.has('json')) await writeJson(outlet, { readings, wanted });
    else {
      const told = readings.map(
        ({ sentence, record }) => `${sentence} (${english.day(record.date)})`,
      );
      const lacks = wanted.map((one) =>
        one.said === '' ? `wanted: ${one.wanted}` : `${one.said}: wanted ${one.wanted}`,
      );
      await outlet.write([...told, ...lacks].map((line) => `${line}\n`).join(''));
    }
    return records.length === 1 ? 0 : 1;
  },
};

function sentenceOf(record: LineDraft, ledger: Ledger): string {
  return recordSentence({ id: '', at: '', by: '', ...record }, ledger, english);
}
