import type { Ledger } from '../ledger/ledger.ts';
import { type HandOut, type HandOutPrize, handOutList } from '../questions/hand-out-list.ts';
import { prizes } from '../questions/prizes.ts';
import type { Block, Column, Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { userText } from './user-text.ts';
import { prizeWordsEn } from './words-prizes-en.ts';

/**
 * The list with which prizes are handed out weeks later, ticked on paper. First names and initials
 * in their own order, so that it ranks nobody.
 */
export function handOutPaper(ledger: Ledger, context: PaperContext): Paper {
  const texts = new PaperTexts(ledger, context);
  const { words } = texts;
  const said = prizeWordsEn.handOut;
  const list = handOutList(ledger, prizes(ledger).sellers);
  const sure = rowsOf(list, (prize) => !prize.notReached);
  const sellers = list.filter((one) => one.prizes.some((prize) => !prize.notReached)).length;
  const decide = rowsOf(list, (prize) => prize.notReached);
  const names = namesOf(texts);
  return {
    ...texts.frame(said.title, `hand-out-list-${context.asAt}`),
    facts: [{ label: words.asAt, value: texts.asAt }],
    blocks: [
      { block: 'lead', text: said.lead(texts.units(sure.length), texts.units(sellers)) },
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
      ...toDecide(decide, names),
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
    { head: prizeWordsEn.order.prize, shows: 'text' },
  ];
}

function toDecide(rows: readonly string[][], columns: readonly Column[]): readonly Block[] {
  const { decide, decideWhy } = prizeWordsEn.handOut;
  if (rows.length === 0) return [];
  return [
    { block: 'heading', text: decide },
    { block: 'words', text: decideWhy },
    { block: 'table', columns, rows },
  ];
}

function rowsOf(list: readonly HandOut[], keep: (prize: HandOutPrize) => boolean): string[][] {
  return list.flatMap(({ name, prizes: own }) =>
    own.filter(keep).map((prize) => [userText(name), prizeText(prize)]),
  );
}

/** `Club shirt, Youth M`; a choice that is missing is told in its place. */
function prizeText({ prize, choice, choiceMissing }: HandOutPrize): string {
  const what = choiceMissing ? prizeWordsEn.handOut.choiceMissing : choice;
  return what === undefined ? userText(prize) : `${userText(prize)}, ${userText(what)}`;
}
