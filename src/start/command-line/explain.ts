import { examineJsonText } from '../../intake/json-text.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type Explained, explain as explainOf } from '../../questions/explain/explain.ts';
import { readObservation } from '../../questions/explain/observation.ts';
import { accountName, productName } from '../../statements/account-name.ts';
import { explanationWords, lookWords } from '../../statements/explanation-words.ts';
import { english } from '../../words/english.ts';
import { messageOf } from '../message-of.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { standardInput } from './standard-input.ts';
import { Stop } from './stop.ts';

export const explain: Command = {
  options: { ...bookOptions, 'as-of': { type: 'string' } },
  takes: ['BOOK'],
  help: `Which records most likely went wrong where something does not agree, best first.

What was seen stands on standard input:
  {"observed":{"stock:stockroom":{"honey":12},"money:owed:ada":4500,"money:bank":81000}}
Accounts are those of balances, with stock:, money: or credit: before them. Units by product; a
product that is not named is 0. Money in minor units. An account that is not named was not seen.

  --as-of DAY   what was seen is of the end of that day (YYYY-MM-DD)
  --json        {"difference":{…},"unexplained":bool,
                "explanations":[{"edits":[…],"odds":n,"kind":"…","words":"…"}]}

Every explanation accounts for the whole difference. odds: its chance, from 0 to 1, among all that
is listed and everything else that may have happened; equal odds are ties. unexplained: no single
mistake explains it; what is listed then are two or three at once. decides: where to look next.

Exit code: 0 where all that was seen agrees with the book, 1 where it differs.

${BOOK_HELP}

Examples
  cratebook explain spring.jsonl < seen.json
  cratebook explain spring.jsonl --as-of 2027-03-01 --json < seen.json`,
  run: async (given, outlet) => {
    const day = given.day('as-of');
    const said = await readSaid(given, outlet);
    const { ledger } = await openBook(given, outlet);
    const observed = readObservation(ledger, said);
    if (!observed.ok) throw new Stop(`standard input: ${observed.refusal}`);
    const explained = explainOf(ledger, observed.value, { day });
    const code = Object.keys(explained.difference).length === 0 ? 0 : 1;
    if (given.has('json')) await writeJson(outlet, answerOf(explained, ledger));
    else await outlet.write(wordsOf(explained, ledger));
    return code;
  },
};

async function readSaid(given: Arguments, outlet: Outlet): Promise<unknown> {
  if (given.positionals[0] === '-') {
    throw new Stop('BOOK: said "-", wanted a file: standard input holds what was seen');
  }
  const text = await standardInput(outlet);
  if (text.trim() === '') throw new Stop(`standard input: is empty, wanted ${WANTED}`);
  let said: unknown;
  try {
    said = JSON.parse(text);
  } catch (error) {
    throw new Stop(`standard input: is not JSON: ${messageOf(error)}`);
  }
  const [fault] = examineJsonText(text).faults;
  if (fault !== undefined) {
    throw new Stop(`standard input: ${fault.field}: said ${fault.said}, wanted ${fault.wanted}`);
  }
  if (typeof said === 'object' && said !== null && 'observed' in said) return said.observed;
  throw new Stop(`standard input: has no "observed", wanted ${WANTED}`);
}

const WANTED = '{"observed":{"stock:stockroom":{"honey":12}}}';

function answerOf(explained: Explained, ledger: Ledger) {
  const { difference, explanations, unexplained, decides } = explained;
  return {
    difference,
    explanations: explanations.map((each) => ({
      edits: each.edits,
      odds: each.odds,
      kind: each.kind,
      words: explanationWords(each, ledger, english),
    })),
    unexplained,
    ...(decides === undefined
      ? {}
      : { decides: { ...decides, words: lookWords(decides, ledger, english) } }),
  };
}

function wordsOf(explained: Explained, ledger: Ledger): string {
  const { difference, explanations, unexplained, decides } = explained;
  if (Object.keys(difference).length === 0) return 'What was seen agrees with the book.\n';
  const lines = Object.entries(difference).flatMap(([name, off]) =>
    differenceLines(name, off, ledger),
  );
  if (unexplained) lines.push('', 'Nothing single explains this.');
  for (const each of explanations) {
    lines.push('', `${Math.round(each.odds * 100)} %  ${explanationWords(each, ledger, english)}`);
  }
  if (decides !== undefined) lines.push('', lookWords(decides, ledger, english));
  return `${lines.join('\n')}\n`;
}

function differenceLines(
  name: string,
  off: number | Readonly<Record<string, number>>,
  ledger: Ledger,
): string[] {
  const cut = name.indexOf(':');
  const which = name.slice(0, cut);
  const account = name.slice(cut + 1);
  if (which !== 'stock' && which !== 'money' && which !== 'credit') return [];
  const place = accountName(ledger, which, account, english);
  const currency = ledger.setup.season?.currency ?? '';
  if (typeof off === 'number')
    return [`▲ ${place}: ${less(off, english.money(Math.abs(off), currency))}`];
  return Object.entries(off).map(([product, units]) => {
    const amount = `${english.units(Math.abs(units))} ${productName(ledger.setup, product)}`;
    return `▲ ${place}: ${less(units, amount)}`;
  });
}

function less(by: number, amount: string): string {
  return `${amount} ${by < 0 ? 'less' : 'more'} than in the book`;
}
