import { done, type Outcome, refused } from '../../base/outcome.ts';
import { amountMinor } from '../table/amount-text.ts';
import { type DayOrder, dayOf } from '../table/day-cell.ts';
import type { FileRefusal } from '../table/file-refusal.ts';
import { fittingColumns } from '../table/fitting-columns.ts';
import { cellReader, cutOffRow, type TableRow, type TextTable } from '../table/text-table.ts';
import type { KnownNames } from './known-names.ts';
import { sortOfWords } from './sort-words.ts';
import { guessSupplierColumns, type SupplierColumns } from './supplier-columns.ts';
import type { SupplierFile, SupplierLine, SupplierSort } from './supplier-file.ts';

/** What may be said of a table beforehand: all columns, or only how its days are written. */
export interface SupplierTableSaid {
  readonly columns?: SupplierColumns | undefined;
  readonly days?: DayOrder | undefined;
}

/**
 * A supplier's statement as a table: a line a product, a line a delivery with a column a product,
 * or a line an amount. Rows that say a balance or a total are not lines, but count among them.
 */
export function readSupplierTable(
  table: TextTable,
  currency: string,
  names: KnownNames,
  said: SupplierTableSaid = {},
): Outcome<SupplierFile & { readonly columns: SupplierColumns }, FileRefusal> {
  const columns = columnsFor(table, names, said);
  if (!columns.ok) return columns;
  const cut = cutOffRow(table);
  if (cut !== undefined) return refused(cut);
  const reader = new RowReader(table, columns.value, currency, names);
  const drafts: Draft[] = [];
  let owed: number | undefined;
  for (const [index, row] of table.rows.entries()) {
    const draft = reader.read(row, index + 1);
    if (!draft.ok) return draft;
    if (draft.value.balance !== undefined) owed = draft.value.balance;
    if (!draft.value.isTotal) drafts.push(draft.value);
  }
  const chargeSign = signOfCharges(drafts);
  if (runsBack(drafts)) owed = drafts[0]?.balance ?? owed;
  const lines = drafts.map((draft) => lineOf(draft, chargeSign));
  return done({
    lines,
    owed: owed === undefined ? owed : owed * chargeSign,
    columns: columns.value,
  });
}

function columnsFor(
  table: TextTable,
  names: KnownNames,
  said: SupplierTableSaid,
): Outcome<SupplierColumns, FileRefusal> {
  const guess = said.columns ?? guessSupplierColumns(table, names);
  const wanted = 'columns for a date and for units or an amount';
  return fittingColumns(table, guess, namesOf, { days: said.days, wanted });
}

type ColumnsNamed = Omit<SupplierColumns, 'days'> & { readonly days?: DayOrder | undefined };

function namesOf({ words, days: _days, decimals: _decimals, ...single }: ColumnsNamed): string[] {
  return [...words, ...Object.values(single).flatMap((name) => name ?? [])];
}

/** A row before it is known which sign charges have in this file. */
interface Draft extends Omit<SupplierLine, 'sort' | 'cents'> {
  readonly sort: SupplierSort | 'swap' | undefined;
  /** Minor units with the file's own sign. */
  readonly signed: number | undefined;
  readonly balance: number | undefined;
  readonly isTotal: boolean;
}

class RowReader {
  readonly #table: TextTable;
  readonly #columns: SupplierColumns;
  readonly #currency: string;
  readonly #names: KnownNames;

  constructor(table: TextTable, columns: SupplierColumns, currency: string, names: KnownNames) {
    this.#table = table;
    this.#columns = columns;
    this.#currency = currency;
    this.#names = names;
  }

  read(row: TableRow, line: number): Outcome<Draft, FileRefusal> {
    const columns = this.#columns;
    const cell = cellReader(this.#table, row);
    const words = columns.words.map(cell).filter((text) => text !== '');
    const isTotal = TOTAL.test(row.cells.join(' '));
    const date = dayOf(cell(columns.date), columns.days);
    if (date === undefined && !isTotal) {
      const said = cell(columns.date);
      return refused({
        line: row.at,
        field: columns.date,
        said,
        wanted: `a day as ${columns.days}`,
      });
    }
    const signed = this.#amount(cell, row.at);
    if (!signed.ok) return signed;
    const goods = isTotal ? done({}) : this.#goods(cell, row.at);
    if (!goods.ok) return goods;
    const balance = amountMinor(cell(columns.balance), this.#currency, columns.decimals);
    const reference = cell(columns.reference);
    const neighbour = cell(columns.neighbour);
    return done({
      line,
      date: date ?? '',
      sort:
        words.map(sortOfWords).find((sort) => sort !== undefined) ?? sortOfWords(words.join(' ')),
      goods: goods.value,
      signed: signed.value,
      reference: reference === '' ? undefined : reference,
      neighbour: this.#names.neighbour(neighbour) ?? this.#names.neighbour(words.join(' ')),
      text: [...words, neighbour].filter((text) => text !== '').join(', '),
      balance,
      isTotal,
    });
  }

  #amount(cell: (head?: string) => string, at: number): Outcome<number | undefined, FileRefusal> {
    const { amount, charge, credit, decimals } = this.#columns;
    let signed: number | undefined;
    for (const [head, sign] of [
      [amount, 1],
      [charge, 1],
      [credit, -1],
    ] as const) {
      const text = cell(head);
      if (head === undefined || text === '' || text === '-') continue;
      const minor = amountMinor(text, this.#currency, decimals);
      if (minor === undefined) {
        const wanted = `an amount in ${this.#currency}`;
        return refused({ line: at, field: head, said: text, wanted });
      }
      signed = (signed ?? 0) + sign * minor;
    }
    return done(signed);
  }

  #goods(
    cell: (head?: string) => string,
    at: number,
  ): Outcome<Readonly<Record<string, number>>, FileRefusal> {
    const { product, units, cases } = this.#columns;
    const goods: Record<string, number> = {};
    const named = cell(product);
    const id = this.#names.product(named);
    const head = cell(units) === '' ? cases : units;
    if (named !== '' && id === undefined && cell(head) !== '') {
      const wanted = 'a product of this book, by its name or id';
      return refused({ line: at, field: product ?? '', said: named, wanted });
    }
    const counted = [
      ...(id === undefined
        ? []
        : [{ id, head, times: head === cases ? this.#names.caseOf(id) : 1 }]),
      ...this.#table.heads.flatMap((each) => {
        const wide = this.#names.product(each);
        return wide === undefined ? [] : [{ id: wide, head: each, times: 1 }];
      }),
    ];
    for (const { id: of, head: column, times } of counted) {
      const text = cell(column);
      if (text === '' || text === '-') continue;
      if (!/^[+-−]?\d[\d, ]*(?:\.0+)?$/.test(text)) {
        return refused({ line: at, field: column ?? '', said: text, wanted: 'whole units' });
      }
      const count = Number(text.replace('−', '-').replace(/[, ]/g, '')) * times;
      if (count !== 0) goods[of] = (goods[of] ?? 0) + count;
    }
    return done(goods);
  }
}

const TOTAL = new RegExp(
  [
    '\\b(?:opening|closing|starting|ending|previous|final) balance\\b',
    '\\bbalance (?:brought|carried|due|owed)\\b',
    '\\b(?:sub-?total|totals?|brought forward|carried forward)\\b',
  ].join('|'),
  'i',
);

/** The sign that deliveries have in this file: charges are plus nearly everywhere. */
function signOfCharges(drafts: readonly Draft[]): 1 | -1 {
  const charges = drafts.filter(({ sort }) => sort === 'delivery');
  const minus = charges.filter(({ signed = 0 }) => signed < 0).length;
  return minus * 2 > charges.length ? -1 : 1;
}

function runsBack(drafts: readonly Draft[]): boolean {
  return (drafts[0]?.date ?? '') > (drafts.at(-1)?.date ?? '');
}

function lineOf(draft: Draft, chargeSign: 1 | -1): SupplierLine {
  const { signed, balance: _balance, isTotal: _isTotal, ...rest } = draft;
  const units = Object.values(draft.goods);
  const isBack = units.length > 0 && units.every((each) => each < 0);
  const isCredit = isBack || (signed ?? 0) * chargeSign < 0;
  const goods = isBack
    ? Object.fromEntries(Object.entries(draft.goods).map(([id, each]) => [id, -each]))
    : draft.goods;
  const cents = signed === undefined ? undefined : Math.abs(signed);
  return { ...rest, goods, cents, sort: sortOf(draft, isCredit) };
}

/** Words first; where they leave it open, what is charged came in and what is credited went out. */
function sortOf({ sort, goods }: Draft, isCredit: boolean): SupplierSort {
  if (sort === 'swap') return isCredit ? 'swap-out' : 'swap-in';
  if (sort !== undefined) return sort;
  return Object.keys(goods).length > 0 && !isCredit ? 'delivery' : 'other';
}
