import { minorDigits } from '../base/currency.ts';
import {
  type ListColumns,
  NAME_MAX,
  nameKey,
  type PastedRow,
  type PastedRows,
  type Proposed,
  pastedWhole,
  RowFindings,
  type Twin,
  textRows,
} from './pasted-rows.ts';
import { freeId } from './short-id.ts';
import { amountMinor, decimalMarkOf } from './table/amount-text.ts';

/** A supplier's price list from a spreadsheet: what its rows say, and what they would become. */

export type ProductColumn = 'name' | 'price' | 'case';
export type PastedProduct = PastedRow<ProductColumn>;

export interface ProposedProduct extends Proposed<ProductColumn> {
  readonly product: string;
  readonly name: string;
  /** Minor units a unit. */
  readonly price: number;
  /** Units in a case; 1 where the list says nothing of cases. */
  readonly case: number;
}

/** What a case price says is not the price of a unit, so such a column is not kept. */
const COLUMNS: ListColumns<ProductColumn> = {
  headings: [
    ['price', /^(?!.*\b(case|box|carton|crate|pack|caja)\b).*\b(price|cost|each|precio)\b|^单?价/u],
    ['case', /^(?!.*\b(price|cost|precio)\b).*\b(case|box|carton|crate|pack|units|caja)\b|^每?箱/u],
    [
      'name',
      /^(?!.*\b(code|no|number|sku)\b).*\b(name|products?|items?|goods|nombre|producto)\b|[品名]/u,
    ],
  ],
  needed: 'name',
  bare: columnsWithoutHeadings,
};

/** Reads pasted cells into rows. */
export function readPastedProducts(
  pasted: readonly (readonly string[])[],
): PastedRows<ProductColumn> {
  const { rows, notKept } = textRows(pasted, COLUMNS);
  return {
    rows: rows.map(({ line, at }) => ({
      line,
      name: at('name'),
      price: at('price'),
      case: at('case'),
    })),
    notKept,
  };
}

/**
 * Without headings: the first column of words is the name. Of the columns of numbers, those right
 * of it first, the price is the first with decimals or a sign, or else the first; the next one is
 * the case. One row that is wrong does not turn its column, so half of the cells are enough.
 */
function columnsWithoutHeadings(rows: readonly string[][]): (ProductColumn | undefined)[] {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const columns = Array.from({ length: width }, (_, at) =>
    rows.map((cells) => cells[at] ?? '').filter((cell) => cell !== ''),
  );
  const isNumbers = columns.map(
    (cells) => cells.length > 0 && 2 * cells.filter(isNumber).length >= cells.length,
  );
  const name = isNumbers.indexOf(false);
  const numbers = [...isNumbers.keys()]
    .filter((at) => isNumbers[at])
    .sort((a, b) => Number(a < name) - Number(b < name) || a - b);
  const price = numbers.find((at) => columns[at]?.some(isMoney)) ?? numbers[0];
  const inCase = numbers.find((at) => at !== price);
  return columns.map((_, at) => {
    if (at === name) return 'name';
    if (at === price) return 'price';
    return at === inCase ? 'case' : undefined;
  });
}

function isNumber(cell: string): boolean {
  return /^[^\p{L}]*\d[^\p{L}]*$/u.test(cell.replace(/\b[A-Z]{3}\b/u, ''));
}

function isMoney(cell: string): boolean {
  return /\p{Sc}|\b[A-Z]{3}\b|\d[.,]\d{1,2}(?!\d)/u.test(cell);
}

/**
 * What the rows would become: ids that nothing has yet, products of the book left alone. Ask again
 * after every fix in the preview.
 *
 * @param currency ISO 4217, for the decimals of prices
 */
export function proposeProducts(
  rows: readonly PastedProduct[],
  known: Iterable<{ readonly product: string; readonly name: string }>,
  currency: string,
): ProposedProduct[] {
  const there = new Map<string, Twin>();
  const ids = new Set<string>();
  for (const { product, name } of known) {
    there.set(nameKey(name), 'the book');
    ids.add(product);
  }
  return rows.map((cells) => {
    const found = new RowFindings(cells);
    const read = readCells(cells, found, currency);
    const product = freeId(cells.name, 'product', ids);
    const twin = there.get(nameKey(cells.name));
    const { usable } = found;
    if (usable && twin !== undefined) found.addTwin('name', twin);
    if (usable && twin === undefined) {
      there.set(nameKey(cells.name), 'the list');
      ids.add(product);
    }
    const state = !usable ? 'fix' : twin === undefined ? 'new' : 'already';
    return { cells, state, product, name: cells.name, ...read, findings: found.list };
  });
}

function readCells(
  cells: PastedProduct,
  found: RowFindings<ProductColumn>,
  currency: string,
): Pick<ProposedProduct, 'price' | 'case'> {
  if (cells.name === '') found.add('name', 'write the name on the pack');
  if (cells.name.length > NAME_MAX) found.add('name', `write at most ${NAME_MAX} characters`);
  const price = amountMinor(cells.price, currency, decimalMarkOf([cells.price])) ?? -1;
  if (price < 0) found.add('price', `write an amount like ${exampleAmount(currency)}`);
  const inCase = pastedWhole(cells.case);
  if (inCase === undefined) found.add('case', 'no units in a case: taken as 1', 'warning');
  if (inCase === 'unclear' || inCase === 0)
    found.add('case', 'write whole units like 12, or nothing');
  return { price, case: typeof inCase === 'number' ? inCase : 1 };
}

function exampleAmount(currency: string): string {
  const digits = minorDigits(currency);
  return digits === 0 ? '1200' : `12.${'0'.repeat(digits)}`;
}
