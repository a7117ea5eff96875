import type { Ledger } from '../ledger/ledger.ts';
import { prizes } from '../questions/prizes.ts';
import type { Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { userText } from './user-text.ts';

/** The order of prizes by prize and choice, with a box for each line that came. */
export function prizeOrderPaper(ledger: Ledger, context: PaperContext): Paper {
  const texts = new PaperTexts(ledger, context);
  const said = texts.words.prizeOrder;
  const { order, sellers, notShared } = prizes(ledger);
  const pieces = order.reduce((sum, line) => sum + line.pieces, 0);
  const missing = sellers.reduce((sum, seller) => sum + seller.missing.length, 0);
  const open = Object.values(notShared).reduce((sum, units) => sum + Math.max(0, units), 0);
  return {
    ...texts.frame(said.title, `prize-order-${context.asAt}`),
    facts: [{ label: texts.words.asAt, value: texts.asAt }],
    blocks: [
      { block: 'lead', text: pieces === 0 ? said.nothing : said.lead(pieces) },
      ...(missing === 0 ? [] : [words(said.waits(texts.units(missing)))]),
      ...(open === 0 ? [] : [words(said.notShared(open))]),
      {
        block: 'table',
        columns: [
          { head: said.prize, shows: 'text' },
          { head: said.choice, shows: 'text' },
          { head: said.pieces, shows: 'number' },
          { head: said.came, shows: 'box' },
        ],
        rows: order.map((line) => [
          userText(line.prize),
          userText(line.choice ?? ''),
          texts.units(line.pieces),
          '',
        ]),
        totals: [[texts.words.total, '', texts.units(pieces), '']],
      },
      words(said.confirmed),
    ],
  };
}

function words(text: string): { readonly block: 'words'; readonly text: string } {
  return { block: 'words', text };
}
