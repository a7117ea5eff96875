import type { Ledger } from '../ledger/ledger.ts';
import { type HandOut, type HandOutPrize, handOutList } from '../questions/hand-out-list.ts';
import { prizes } from '../questions/prizes.ts';
import { joined } from './joined.ts';
import type { Block, Column, Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { userText } from './user-text.ts';

/**
 * The list with which prizes are handed out weeks later, ticked on paper. First names and initials
 * in their own order, so that it ranks nobody.
 */
export function handOutPaper(ledger: Ledger, context: PaperContext): Paper {
  const texts = new PaperTexts(ledger, context);
  const { words } = texts;
  const said = words.handOut;
  const list = handOutList(ledger, prizes(ledger).sellers);
  const sure = rowsOf(list, texts, (prize) => !prize.notReached);
  const sellers = list.filter((one) => one.prizes.some((prize) => !prize.notReached)).length;
  const decide = rowsOf(list, texts, (prize) => prize.notReached);
  const names = namesOf(texts);
  return {
    ...texts.frame(said.title, `hand-out-list-${context.asAt}`),
    facts: [{ label: words.asAt, value: texts.asAt }],
    blocks: [
      { block: 'lead', text: said.lead(sure.length, sellers) },
      { block: 'words', text: said.how },
      {
        block: 'table',
        columns: [
          ...names,
          { head: said.handedOut, shows: 'box' },
          { head: said.day, shows: 'box' },
        ],
        rows: sure.map((row) => [...row, '', '']),
      },
      ...toDecide(decide, names, texts),
      {
        block: 'signatures',
        places: [{ label: said.signer, lines: [words.signName, words.signature, words.signDay] }],
      },
    ],
  };
}

function namesOf({ words }: PaperTexts): readonly Column[] {
  return [
    { head: words.seller, shows: 'text' },
    { head: words.prizeOrder.prize, shows: 'text' },
  ];
}

function toDecide(
  rows: readonly string[][],
  columns: readonly Column[],
  texts: PaperTexts,
): readonly Block[] {
  const { decide, decideWhy } = texts.words.handOut;
  if (rows.length === 0) return [];
  return [
    { block: 'heading', text: decide },
    { block: 'words', text: decideWhy },
    { block: 'table', columns, rows },
  ];
}

function rowsOf(
  list: readonly HandOut[],
  texts: PaperTexts,
  keep: (prize: HandOutPrize) => boolean,
): string[][] {
  return list.flatMap(({ name, prizes: own }) =>
    own.filter(keep).map((prize) => [userText(name), prizeText(prize, texts)]),
  );
}

/** `Club shirt, Youth M`; a choice that is missing is told in its place. */
function prizeText(
  { prize, choice, choiceMissing }: HandOutPrize,
  { say, words }: PaperTexts,
): string {
  const what = choiceMissing ? words.handOut.choiceMissing : choice;
  return joined([userText(prize), what === undefined ? '' : userText(what)], say);
}
