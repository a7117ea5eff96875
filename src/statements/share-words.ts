import { unreachable } from '../base/assert.ts';
import type { ShareMethod } from '../questions/share/share-out.ts';
import type { ShareSheet, SheetRefusal } from '../questions/share/share-sheet.ts';
import type { Say } from '../words/say.ts';
import { joined } from './joined.ts';
import { ofUnits, partsText, rounded } from './parts-text.ts';

/** A share-out in words: why it is fair, seller by seller and as a whole. */

/** Names of sellers and products as people know them. */
export interface ShareNames {
  readonly seller: (id: string) => string;
  readonly product: (id: string) => string;
}

/** One sentence on the whole: what was shared by what, how it was rounded, who told apart how. */
export function shareReason(sheet: ShareSheet, names: ShareNames, say: Say): string {
  const { shared, input } = sheet;
  const units = Object.values(input.products).reduce((sum, each) => sum + each, 0);
  const parts = [
    say.count(units)`# unit over ${weightText(sheet, say)}: ${ruleText(sheet, say)}|# units over
      ${weightText(sheet, say)}: ${ruleText(sheet, say)}`,
  ];
  if (sheet.method !== 'rota') {
    const worst = ofUnits(shared.worst, say);
    parts.push(say`nobody is more than ${worst} from due, earlier share-outs included`);
  }
  if (shared.tied.length > 0) {
    const tied = say.list(shared.tied.map(names.seller));
    parts.push(say`${tied} had equal claims on the last unit, so the order of the list decided`);
  }
  return say`${parts.join(say`; `)}.`;
}

/** Why one seller gets so many: `180 of 540 minutes is 19.4 due, 0.4 too few so far; gets 20`. */
export function sellerReason(sheet: ShareSheet, seller: string, say: Say): string {
  const row = sheet.input.sellers.find((each) => each.seller === seller);
  if (row === undefined) return '';
  const { shared, by } = sheet;
  const due = partsText(shared.due[seller] ?? 0, say);
  const all = sheet.input.sellers.reduce((sum, each) => sum + each.weight, 0);
  const share = {
    minutes: say`${row.weight} of ${all} minutes is ${due} due`,
    even: say`an even part is ${due} due`,
    hand: say`${row.weight} of ${all} by hand is ${due} due`,
  }[by];
  const carried = Number(row.carried?.valueOf() ?? 0);
  const before = joined([share, carriedPart(sheet.method, carried, say)], say);
  return say`${before}; gets ${shared.totals[seller] ?? 0}`;
}

/** How the season's share-outs have treated a seller so far; empty where they came out even. */
export function carriedWords(name: string, carried: number, say: Say): string {
  const size = ofUnits(Math.abs(carried), say);
  if (rounded(carried) === 0) return '';
  return carried < 0
    ? say`${name} has had ${size} less than due so far.`
    : say`${name} has had ${size} more than due so far.`;
}

/** `0.4 of a unit less`, `1.5 units more`, or `even`. */
export function carriedSize(carried: number, say: Say): string {
  if (rounded(carried) === 0) return say`even`;
  const size = ofUnits(Math.abs(carried), say);
  return carried < 0 ? say`${size} less` : say`${size} more`;
}

/** What locked cells did to the rest, one sentence each; empty where they did nothing. */
export function lockWords(sheet: ShareSheet, names: ShareNames, say: Say): string[] {
  const { left, forced, beyond } = sheet.shared;
  const said = Object.entries(left)
    .filter(([, units]) => units > 0)
    .map(([product, units]) => {
      const name = names.product(product);
      return say`${units} ${name} not yet shared: every cell of ${name} is locked.`;
    });
  for (const { sellers, products } of forced) {
    const who = say.list(sellers.map(names.seller));
    const what = say.list(products.map(names.product));
    said.push(say`Only ${who} can take the rest of ${what}, so totals move away from due.`);
  }
  if (beyond > 0) {
    said.push(
      say.count(beyond)`Around the locked cells, some go up to # unit beyond their rounded
        part.|Around the locked cells, some go up to # units beyond their rounded part.`,
    );
  }
  return said;
}

/** Why nothing can be shared around what was fixed, and what to do. */
export function sheetRefusalWords(refusal: SheetRefusal, names: ShareNames, say: Say): string {
  switch (refusal.kind) {
    case 'locked_too_much': {
      const { locked, pool } = refusal;
      const name = names.product(refusal.product);
      return say`${name}: ${locked} locked, the pool has ${pool}. Lower or unlock
        ${locked - pool}.`;
    }
    case 'no_weight':
      return say`Nobody has a weight above 0. Give one to at least one seller.`;
    case 'weights_too_large':
      return say`The weights are too large. Divide them all by the same number.`;
    default:
      return unreachable(refusal);
  }
}

function weightText({ by, input }: ShareSheet, say: Say): string {
  const taking = input.sellers.filter(({ weight }) => weight > 0);
  const all = taking.reduce((sum, { weight }) => sum + weight, 0);
  const sellers = say.count(taking.length)`# seller|# sellers`;
  if (by === 'even') return say`${sellers} evenly`;
  return by === 'minutes'
    ? say`${all} minutes worked by ${sellers}`
    : say`${all} parts set by hand by ${sellers}`;
}

function ruleText({ method }: ShareSheet, say: Say): string {
  switch (method) {
    case 'remainder':
      return say`each total is the exact due rounded by largest remainder`;
    case 'divisor':
      return say`each total by the divisor rule of Webster`;
    case 'rota':
      return say`one unit after the other in turn, whatever the weights`;
    default:
      return unreachable(method);
  }
}

function carriedPart(method: ShareMethod, carried: number, say: Say): string {
  if (method !== 'remainder' || rounded(carried) === 0) return '';
  const parts = partsText(Math.abs(carried), say);
  return carried < 0 ? say`${parts} too few so far` : say`${parts} too many so far`;
}
