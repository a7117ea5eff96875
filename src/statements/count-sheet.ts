import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { stepOn } from '../ledger/prices.ts';
import type { RecordOf } from '../records/record.ts';
import type { Paper } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { userText } from './user-text.ts';

/**
 * A sheet for counting the stockroom, in the order of the shelves, with empty boxes. It never shows
 * what the book says, so that nobody copies it (blind count, common practice).
 */
export function countSheet(ledger: Ledger, context: PaperContext): Paper {
  const texts = new PaperTexts(ledger, context);
  const { words } = texts;
  const said = words.countSheet;
  return {
    ...texts.frame(said.title, `count-sheet-${context.asAt}`),
    facts: [
      { label: words.day, value: texts.asAt },
      { label: said.place, value: said.stockroom },
    ],
    blocks: [
      { block: 'lead', text: said.lead },
      { block: 'words', text: said.how },
      {
        block: 'table',
        columns: [
          { head: said.shelf, shows: 'text' },
          { head: words.product, shows: 'text' },
          { head: said.caseOf, shows: 'number' },
          { head: said.cases, shows: 'box' },
          { head: said.singles, shows: 'box' },
        ],
        rows: productsToCount(ledger).map(({ product, storage }) => {
          const ofCase = texts.units(caseUnits(ledger, product, context.asAt));
          return [userText(storage ?? ''), texts.product(product), ofCase, '', ''];
        }),
      },
      { block: 'words', text: said.caution },
      {
        block: 'signatures',
        places: said.counters.map((label) => ({
          label,
          lines: [words.signName, words.signature, words.signDay],
        })),
      },
    ],
  };
}

/**
 * Shelf order: by where a product is kept, then by name. A retired product only while some is left.
 */
function productsToCount(ledger: Ledger): RecordOf<'product'>[] {
  return [...ledger.setup.products.values()]
    .filter(
      (product) =>
        product.retired !== true || ledger.balances.stockOf('stockroom', product.product) !== 0,
    )
    .sort(
      (a, b) =>
        byText(a.storage ?? '', b.storage ?? '') ||
        byText(a.name, b.name) ||
        byText(a.product, b.product),
    );
}

function caseUnits(ledger: Ledger, product: string, day: string): number {
  return stepOn(ledger.prices.get(product) ?? [], day)?.caseUnits ?? 1;
}
