import { minorDigits } from '../base/currency.ts';
import { byText } from '../base/order.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { denominations } from '../questions/denominations.ts';
import { shiftCover } from '../questions/stall/shift-cover.ts';
import type { RecordOf } from '../records/record.ts';
import type { Column, Fact, Paper, TableBlock } from './paper.ts';
import { type PaperContext, PaperTexts } from './paper-frame.ts';
import { clockText, stallTimeText } from './stall-time-text.ts';
import { userText } from './user-text.ts';

/**
 * A stall's sheet on paper, for a day without a phone: the same fields in the same order as on the
 * phone, to be keyed in later. Sellers stand on it by first name and initial; what is expected does
 * not, so that nobody copies it.
 */
export function stallSheetPaper(
  ledger: Ledger,
  id: string,
  context: PaperContext,
): Outcome<Paper, { readonly name: 'unknown_stall' }> {
  const stall = ledger.setup.stalls.get(id);
  if (stall === undefined) return refused({ name: 'unknown_stall' });
  const texts = new PaperTexts(ledger, context);
  const { say } = texts;
  const host = userText(ledger.setup.hosts.get(stall.host)?.name ?? stall.host);
  return done({
    ...texts.frame(say`Stall sheet`, `stall-${id}`),
    facts: factsOf(stall, host, texts),
    blocks: [
      { block: 'words', text: say`Local rules and the host’s rules go first. Before opening:` },
      readyTable(texts),
      { block: 'heading', text: say`Goods, in units` },
      goodsTable(ledger, stall, texts),
      { block: 'heading', text: say`Cash, in pieces, and cash drops` },
      cashTable(ledger, texts),
      moneyTable(texts),
    ],
  });
}

function factsOf(stall: RecordOf<'stall'>, host: string, texts: PaperTexts): Fact[] {
  const { say, words } = texts;
  const shifts = stall.shifts.map(
    ({ seller, from, to }) => say`${texts.seller(seller)} ${clockText(from)} to ${clockText(to)}`,
  );
  const gaps = shiftCover(stall).gaps.map(
    ({ from, to }) => say`${clockText(from)} to ${clockText(to)}`,
  );
  return [
    { label: say`Stall`, value: host },
    { label: words.day, value: stallTimeText(stall.starts, stall.ends, say) },
    { label: words.sellers, value: shifts.length === 0 ? words.none : shifts.join(', ') },
    ...(gaps.length === 0 ? [] : [{ label: say`Nobody is down for`, value: gaps.join(', ') }]),
  ];
}

const box = (head: string): Column => ({ head, shows: 'box' });

/** The readiness card: what is written in beside each point, or ticked. */
function readyTable({ say }: PaperTexts): TableBlock {
  const points = [
    [say`First adult`, say`Second adult`],
    [say`Host contact`, say`Who holds the cash`],
    [say`When to stop: heat, cold`, say`Unloaded before children leave the cars`],
    [say`Clear of traffic and of doors`, say`Water, and shade or warmth`],
  ];
  return {
    block: 'table',
    tight: true,
    columns: [{ head: '', shows: 'text' }, box(''), { head: '', shows: 'text' }, box('')],
    rows: points.map(([left = '', right = '']) => [left, '', right, '']),
  };
}

function goodsTable(ledger: Ledger, stall: RecordOf<'stall'>, texts: PaperTexts): TableBlock {
  const { say, words } = texts;
  const day = stall.starts.slice(0, 10);
  const products = [...ledger.setup.products.values()]
    .filter(({ retired }) => retired !== true)
    .sort((a, b) => byText(a.name, b.name) || byText(a.product, b.product));
  return {
    block: 'table',
    tight: true,
    columns: [
      { head: words.product, shows: 'text' },
      { head: say`Price`, shows: 'number' },
      box(say`Taken out`),
      box(say`Brought`),
      box(say`Left`),
      box(say`Damaged`),
      box(say`Sales, one stroke each`),
    ],
    rows: products.map(({ product }) => [
      texts.product(product),
      texts.money(ledger.priceOn(product, day)),
      ...['', '', '', '', ''],
    ]),
  };
}

/** One column a note or coin, or one for the sum where the currency's are not known. */
function cashTable(ledger: Ledger, texts: PaperTexts): TableBlock {
  const { say } = texts;
  const currency = ledger.setup.season?.currency ?? '';
  const pieces = denominations(currency);
  const whole = 10 ** minorDigits(currency);
  const heads = pieces.map((value) =>
    value % whole === 0 ? say.units(value / whole) : texts.money(value),
  );
  const rows = [say`Float`, say`First drop`, say`Second drop`, say`Box at the end`];
  return {
    block: 'table',
    tight: true,
    columns: [{ head: '', shows: 'text' }, ...heads.map(box), box(say`Sum`)],
    rows: rows.map((row) => [row, ...heads.map(() => ''), '']),
  };
}

/** What the settle sheet asks for besides, and who gave and took the drops. */
function moneyTable({ say }: PaperTexts): TableBlock {
  const rows = [
    [say`Card takings`, say`First drop given by`],
    [say`Cheques`, say`First drop held by`],
    [say`Paid out, for what`, say`Second drop given by`],
    [say`Note`, say`Second drop held by`],
    [say`First counter, signed`, say`Second counter, signed`],
  ];
  return {
    block: 'table',
    tight: true,
    columns: [{ head: '', shows: 'text' }, box(''), { head: '', shows: 'text' }, box('')],
    rows: rows.map(([left = '', right = '']) => [left, '', right, '']),
  };
}
