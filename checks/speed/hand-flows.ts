import { assert } from '../../src/base/assert.ts';
import { modelSeconds, USUAL } from './keystroke-level.ts';

/**
 * The flows that are done most, as what the hand does: in the app, where a browser test does
 * exactly this and nothing else, and in a spreadsheet. M a decision, P pointing and tapping, K a
 * key; the M stand by the paper's rules: one before each choice, none before a tap that was decided
 * with the one before (Save after the amount).
 *
 * The spreadsheet is a good one, open on the same phone: a sheet each for families, payments,
 * goods, orders and counts, sums by formula, names filled in after three letters, no row to scroll
 * for.
 */
export interface Flow {
  readonly flow: FlowName;
  readonly what: string;
  readonly app: string;
  /** At most so many taps, keys and seconds by the model. */
  readonly most: { readonly taps: number; readonly keys: number; readonly seconds: number };
  readonly sheet: readonly (readonly [step: string, operators: string])[];
}

export type FlowName =
  | 'payment-due'
  | 'payment-next'
  | 'payment-typed'
  | 'goods-out'
  | 'quick-line'
  | 'undo'
  | 'still-to-pay'
  | 'stall-sale'
  | 'count'
  | 'count-keys';

/** Of nine products four have full cases and singles, five only singles of two digits. */
const PRODUCTS_COUNTED = 9;
const COUNT_BOTH = 4;
/** The field of the cases has the cursor from the second product on. */
const BOTH = 'MKPKKP';
const SINGLES = 'MPKKP';
/** Enter goes from the cases to the singles, and on. */
const BOTH_KEYS = 'MKKKKK';
const SINGLES_KEYS = 'MKKKK';

const SHEET_COUNT: Flow['sheet'] = [
  ['Counts sheet, first empty row', 'MPP'],
  ['five products: past the cases, singles, on', 'MKKKK'.repeat(PRODUCTS_COUNTED - COUNT_BOTH)],
  ['four products: cases, singles, on', 'MKKKKK'.repeat(COUNT_BOTH)],
];

export const flows: readonly Flow[] = [
  {
    flow: 'payment-due',
    what: 'Payment of what is due',
    app: 'MPMPMPP',
    most: { taps: 4, keys: 0, seconds: 8.5 },
    sheet: [
      ['Families sheet', 'MP'],
      ['find the row, read what is due', 'M'],
      ['Payments sheet', 'MP'],
      ['first empty row', 'P'],
      ['day', 'MKKKK'],
      ['three letters of the name, take it', 'MKKKP'],
      ['amount', 'MKKKKKK'],
      ['how it was paid', 'MKKKKK'],
    ],
  },
  {
    flow: 'payment-next',
    what: 'The next payment',
    app: 'MPMPP',
    most: { taps: 3, keys: 0, seconds: 6 },
    sheet: [
      ['Families sheet', 'MP'],
      ['find the row, read what is due', 'M'],
      ['Payments sheet, next row', 'PP'],
      ['day, as above', 'KKKK'],
      ['three letters of the name, take it', 'MKKKP'],
      ['amount', 'MKKKKKK'],
      ['how it was paid', 'MKKKKK'],
    ],
  },
  {
    flow: 'payment-typed',
    what: 'Payment of another amount, two digits',
    app: 'MPMPPMKKP',
    most: { taps: 4, keys: 2, seconds: 10 },
    sheet: [
      ['Payments sheet', 'MP'],
      ['first empty row', 'P'],
      ['day', 'MKKKK'],
      ['three letters of the name, take it', 'MKKKP'],
      ['amount', 'MKKK'],
      ['how it was paid', 'MKKKKK'],
    ],
  },
  {
    flow: 'goods-out',
    what: 'Goods out as ordered, two products',
    app: 'MPMPMPP',
    most: { taps: 4, keys: 0, seconds: 8.5 },
    sheet: [
      ['Orders sheet', 'MP'],
      ['find the row, read two numbers', 'MM'],
      ['Goods sheet', 'MP'],
      ['first empty row', 'P'],
      ['day', 'MKKKK'],
      ['three letters of the name, take it', 'MKKKP'],
      ['two cells, a digit each', 'PMKPMK'],
    ],
  },
  {
    flow: 'quick-line',
    what: 'Payment in one line, by keyboard',
    app: 'MKMKKKKKKKKKKKK',
    most: { taps: 0, keys: 13, seconds: 6.5 },
    sheet: [
      ['Payments sheet, first empty row (keys)', 'MKKKK'],
      ['day', 'MKKKK'],
      ['three letters of the name, take it', 'MKKKK'],
      ['amount', 'MKKK'],
      ['how it was paid', 'MKKKKK'],
    ],
  },
  {
    flow: 'undo',
    what: 'Undo',
    app: 'MP',
    most: { taps: 1, keys: 0, seconds: 2.5 },
    sheet: [['Undo button', 'MP']],
  },
  {
    flow: 'still-to-pay',
    what: 'Who still owes, from any page',
    app: 'MP',
    most: { taps: 1, keys: 0, seconds: 3 },
    sheet: [
      ['Families sheet', 'MP'],
      ['filter of the amount', 'MP'],
      ['more than 0', 'MPKP'],
    ],
  },
  {
    flow: 'stall-sale',
    what: 'One sale at a stall',
    app: 'P',
    most: { taps: 1, keys: 0, seconds: 1.1 },
    sheet: [['the product’s cell, the number one higher, on', 'PMKKK']],
  },
  {
    flow: 'count',
    what: `Count of ${PRODUCTS_COUNTED} products, by taps`,
    app: `MP${SINGLES.repeat(PRODUCTS_COUNTED - COUNT_BOTH)}${BOTH.repeat(COUNT_BOTH)}MP`,
    most: { taps: 20, keys: 22, seconds: 45 },
    sheet: SHEET_COUNT,
  },
  {
    flow: 'count-keys',
    what: `Count of ${PRODUCTS_COUNTED} products, on with Enter`,
    app:
      `MPP${SINGLES_KEYS.repeat(PRODUCTS_COUNTED - COUNT_BOTH)}` +
      `${BOTH_KEYS.repeat(COUNT_BOTH)}MP`,
    most: { taps: 3, keys: 40, seconds: 30 },
    sheet: SHEET_COUNT,
  },
];

export function flowOf(name: FlowName): Flow {
  const found = flows.find(({ flow }) => flow === name);
  assert(found !== undefined, 'every name of a flow has one');
  return found;
}

/** How a flow has grown beyond its most: taps, keys or seconds that are too many. */
export function grown({ most }: Flow, operators: string): string[] {
  const count = (operator: string) => operators.split(operator).length - 1;
  const found = { taps: count('P'), keys: count('K'), seconds: modelSeconds(operators, USUAL) };
  return (['taps', 'keys', 'seconds'] as const)
    .filter((measure) => found[measure] > most[measure])
    .map((measure) => `${found[measure]} ${measure}, at most ${most[measure]}`);
}
