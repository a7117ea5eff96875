import { type DecimalMark, decimalMarkOf } from '../table/amount-text.ts';
import { type DayOrder, dayOrderOf } from '../table/day-cell.ts';
import { HeadFinder } from '../table/head-words.ts';
import { cellsOf, type TextTable } from '../table/text-table.ts';
import type { KnownNames } from './known-names.ts';

/** How the columns of a supplier's statement are to be read; saved by the user once right. */
export interface SupplierColumns {
  /** Names of the columns as in the line of heads. */
  readonly date: string;
  /** Columns whose words say what sort of line it is. */
  readonly words: readonly string[];
  readonly reference?: string | undefined;
  readonly neighbour?: string | undefined;
  readonly product?: string | undefined;
  /** Single units, or cases where there is no column of units. */
  readonly units?: string | undefined;
  readonly cases?: string | undefined;
  /** One column of amounts, or two: what is charged and what is credited to the group. */
  readonly amount?: string | undefined;
  readonly charge?: string | undefined;
  readonly credit?: string | undefined;
  /** What the group owes after the line. */
  readonly balance?: string | undefined;
  readonly days: DayOrder;
  readonly decimals: DecimalMark;
}

/** Words that columns go by, the telling ones first (common practice). */
const WORDS = {
  date: ['date', 'posted', 'day', 'posting date', 'transaction date', 'delivered on', 'datum'],
  sort: ['type', 'kind', 'sort', 'entry', 'activity', 'transaction type', 'transaction', 'event'],
  text: ['description', 'details', 'detail', 'memo', 'text', 'remarks', 'notes', 'what', 'note'],
  reference: [
    'reference',
    'ref',
    'slip',
    'slip no',
    'document',
    'document no',
    'doc',
    'order',
    'order no',
    'order number',
    'number',
    'invoice',
    'no',
    'id',
  ],
  neighbour: [
    'neighbour',
    'neighbor',
    'group',
    'other group',
    'with',
    'counterparty',
    'party',
    'from to',
    'to from',
    'partner',
  ],
  product: ['product', 'item', 'article', 'goods', 'sku', 'product name', 'product id'],
  units: ['units', 'quantity', 'qty', 'pieces', 'singles', 'packages', 'count', 'pcs', 'menge'],
  cases: ['cases', 'cartons', 'boxes'],
  charge: ['charge', 'charges', 'charged', 'debit', 'owed', 'dr'],
  credit: ['credit', 'credits', 'credited', 'cr', 'payment', 'payments'],
  amount: ['amount', 'value', 'total', 'money', 'sum', 'betrag', 'cents'],
  balance: ['balance', 'running balance', 'balance owed', 'amount owed', 'owing', 'saldo'],
} as const;

/**
 * A guess at the columns, for the user to look over; undefined where no date, or neither an amount
 * nor units are found. Columns that are named like products hold their units.
 */
export function guessSupplierColumns(
  table: TextTable,
  names: KnownNames,
): (Omit<SupplierColumns, 'days'> & { readonly days: DayOrder | undefined }) | undefined {
  const heads = new HeadFinder(table.heads.filter((head) => names.product(head) === undefined));
  const date = heads.take(WORDS.date);
  if (date === undefined) return undefined;
  const balance = heads.take(WORDS.balance);
  const sort = heads.take(WORDS.sort);
  const cases = heads.take(WORDS.cases);
  const units = heads.take(WORDS.units);
  const product = heads.take(WORDS.product) ?? productHead(table, names, heads.free());
  const amount = heads.take(WORDS.amount);
  const charge = amount === undefined ? heads.take(WORDS.charge) : undefined;
  const credit = amount === undefined ? heads.take(WORDS.credit) : undefined;
  const neighbour = heads.take(WORDS.neighbour);
  const reference = heads.take(WORDS.reference);
  const words = [...(sort === undefined ? [] : [sort]), ...heads.takeAll(WORDS.text)];
  const isGoods = units !== undefined || cases !== undefined || wideProducts(table, names) > 0;
  if (!isGoods && (amount ?? charge ?? credit) === undefined) return undefined;
  const days = dayOrderOf(cellsOf(table, date));
  const money = [amount, charge, credit, balance].flatMap((head) => cellsOf(table, head));
  return {
    date,
    words,
    reference,
    neighbour,
    product,
    units,
    cases,
    amount,
    charge,
    credit,
    balance,
    days,
    decimals: decimalMarkOf(money),
  };
}

/** A column most of whose cells are products, whatever its head. */
function productHead(table: TextTable, names: KnownNames, heads: readonly string[]) {
  return heads.find((head) => {
    const cells = cellsOf(table, head).filter((cell) => cell !== '');
    const known = cells.filter((cell) => names.product(cell) !== undefined);
    return known.length > 0 && known.length * 2 >= cells.length;
  });
}

function wideProducts(table: TextTable, names: KnownNames): number {
  return table.heads.filter((head) => names.product(head) !== undefined).length;
}
