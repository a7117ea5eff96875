import { unreachable } from '../base/assert.ts';
import type { ShareMethod } from '../questions/share/share-out.ts';
import type { ShareSheet, SheetRefusal } from '../questions/share/share-sheet.ts';
import { unitsText } from './money-text.ts';
import { partsText } from './parts-text.ts';

/** A share-out in words: why it is fair, seller by seller and as a whole. */

/** Names of sellers and products as people know them. */
export interface ShareNames {
  readonly seller: (id: string) => string;
  readonly product: (id: string) => string;
}

/** One sentence on the whole: what was shared by what, how it was rounded, who told apart how. */
export function shareReason(sheet: ShareSheet, names: ShareNames): string {
  const { shared, input } = sheet;
  const units = Object.values(input.products).reduce((sum, each) => sum + each, 0);
  const parts = [`${unitsText(units)} units over ${weightText(sheet)}: ${ruleText(sheet)}`];
  if (sheet.method !== 'rota') {
    const worst = ofUnits(partsText(shared.worst));
    parts.push(`nobody is more than ${worst} from due, earlier share-outs included`);
  }
  if (shared.tied.length > 0) {
    const tied = listed(shared.tied.map(names.seller));
    parts.push(`${tied} had equal claims on the last unit, so the order of the list decided`);
  }
  return `${parts.join('; ')}.`;
}

/** Why one seller gets so many: `180 of 540 minutes is 19.4 due, 0.4 too few so far; gets 20`. */
export function sellerReason(sheet: ShareSheet, seller: string): string {
  const row = sheet.input.sellers.find((each) => each.seller === seller);
  if (row === undefined) return '';
  const { shared, by } = sheet;
  const due = partsText(shared.due[seller] ?? 0);
  const all = sheet.input.sellers.reduce((sum, each) => sum + each.weight, 0);
  const of = `${unitsText(row.weight)} of ${unitsText(all)}`;
  const share = {
    minutes: `${of} minutes is ${due} due`,
    even: `an even part is ${due} due`,
    hand: `${of} by hand is ${due} due`,
  }[by];
  const carried = Number(row.carried?.valueOf() ?? 0);
  const before = carriedPart(sheet.method, carried);
  return `${share}${before}; gets ${unitsText(shared.totals[seller] ?? 0)}`;
}

/** How the season's share-outs have treated a seller so far; empty where they came out even. */
export function carriedWords(name: string, carried: number): string {
  const size = carriedSize(carried);
  return size === 'even' ? '' : `${name} has had ${size} than due so far.`;
}

/** `0.4 of a unit less`, `1.5 units more`, or `even`. */
export function carriedSize(carried: number): string {
  const parts = partsText(Math.abs(carried));
  return parts === '0' ? 'even' : `${ofUnits(parts)} ${carried < 0 ? 'less' : 'more'}`;
}

/** What locked cells did to the rest, one sentence each; empty where they did nothing. */
export function lockWords(sheet: ShareSheet, names: ShareNames): string[] {
  const { left, forced, beyond } = sheet.shared;
  const said = Object.entries(left)
    .filter(([, units]) => units > 0)
    .map(([product, units]) => {
      const name = names.product(product);
      return `${unitsText(units)} ${name} not yet shared: every cell of ${name} is locked.`;
    });
  for (const { sellers, products } of forced) {
    const who = listed(sellers.map(names.seller));
    const what = listed(products.map(names.product));
    said.push(`Only ${who} can take the rest of ${what}, so totals move away from due.`);
  }
  if (beyond > 0) {
    const units = beyond === 1 ? '1 unit' : `${unitsText(beyond)} units`;
    said.push(`Around the locked cells, some go up to ${units} beyond their rounded part.`);
  }
  return said;
}

/** Why nothing can be shared around what was fixed, and what to do. */
export function sheetRefusalWords(refusal: SheetRefusal, names: ShareNames): string {
  switch (refusal.kind) {
    case 'locked_too_much': {
      const name = names.product(refusal.product);
      const over = unitsText(refusal.locked - refusal.pool);
      return (
        `${name}: ${unitsText(refusal.locked)} locked, the pool has ${unitsText(refusal.pool)}. ` +
        `Lower or unlock ${over}.`
      );
    }
    case 'no_weight':
      return 'Nobody has a weight above 0. Give one to at least one seller.';
    case 'weights_too_large':
      return 'The weights are too large. Divide them all by the same number.';
    default:
      return unreachable(refusal);
  }
}

function weightText({ by, input }: ShareSheet): string {
  const taking = input.sellers.filter(({ weight }) => weight > 0);
  const all = taking.reduce((sum, { weight }) => sum + weight, 0);
  const sellers = taking.length === 1 ? '1 seller' : `${unitsText(taking.length)} sellers`;
  if (by === 'even') return `${sellers} evenly`;
  const what = by === 'minutes' ? 'minutes worked' : 'parts set by hand';
  return `${unitsText(all)} ${what} by ${sellers}`;
}

function ruleText({ method }: ShareSheet): string {
  switch (method) {
    case 'remainder':
      return 'each total is the exact due rounded by largest remainder';
    case 'divisor':
      return 'each total by the divisor rule of Webster';
    case 'rota':
      return 'one unit after the other in turn, whatever the weights';
    default:
      return unreachable(method);
  }
}

function carriedPart(method: ShareMethod, carried: number): string {
  const parts = partsText(Math.abs(carried));
  if (method !== 'remainder' || parts === '0') return '';
  return `, ${parts} too ${carried < 0 ? 'few' : 'many'} so far`;
}

/** Parts of a unit with their word: `0.4 of a unit`, `1 unit`, `1.5 units`. */
export function ofUnits(parts: string): string {
  if (parts === '1') return '1 unit';
  return parts.startsWith('0.') ? `${parts} of a unit` : `${parts} units`;
}

function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
