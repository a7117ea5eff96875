import type { BookRecord, MovementRecord, RecordOf } from '../src/records/record.ts';
import { type AuditLine, linesOfRecord } from './audit-lines.ts';

/**
 * An auditor that works balances out a second time, slowly and plainly, from the text of the book
 * specification alone. It shares no code with src/ledger: it finds what counts by walking down from
 * the first writing of each thing, adds signed lines, and revalues the stockroom day by day.
 */

export interface AuditedBalances {
  readonly stock: Record<string, Record<string, number>>;
  readonly money: Record<string, number>;
  readonly credit: Record<string, Record<string, number>>;
}

/** Balances of a book, of all its records or at the end of a day. */
export function audit(book: readonly BookRecord[], asOf?: string): AuditedBalances {
  const records = [...new Map(book.map((record) => [record.id, record])).values()];
  const counting = recordsThatCount(records);
  const prices = priceDays(records, counting);
  const totals = new Map<string, number>();
  const add = ({ ledger, account, of, amount }: AuditLine): void => {
    const key = JSON.stringify([ledger, account, of]);
    totals.set(key, (totals.get(key) ?? 0) + amount);
  };
  const movements = counting.filter(
    (record): record is MovementRecord => 'date' in record && (asOf ?? record.date) >= record.date,
  );
  const changeDays = prices.flatMap(({ day }) => (asOf === undefined || day <= asOf ? [day] : []));
  const days = new Set([...movements.map((movement) => movement.date), ...changeDays]);
  for (const day of [...days].sort()) {
    for (const line of revaluationOn(day, prices, totals)) add(line);
    const price = (product: string): number => priceOf(product, day, prices);
    for (const movement of movements.filter((one) => one.date === day)) {
      const pointedAt = (id: string) => standsFor(id, records);
      for (const line of linesOfRecord(movement, price, pointedAt)) add(line);
    }
  }
  return asAccounts(totals);
}

/** Claims on a record that are in force: a removal that was itself removed is not. */
function claimsOn(id: string, records: readonly BookRecord[]): BookRecord[] {
  return records
    .filter((record) => (record.kind === 'void' ? record.voids : record.replaces) === id)
    .filter((claim) => claim.kind !== 'void' || claimsOn(claim.id, records).length === 0);
}

function laterWritten(a: BookRecord, b: BookRecord): BookRecord {
  if (a.at !== b.at) return a.at > b.at ? a : b;
  return a.id > b.id ? a : b;
}

/** From a first writing, down through the later claim each time, to what counts, if anything. */
function lastWord(first: BookRecord, records: readonly BookRecord[]): BookRecord | undefined {
  const claims = claimsOn(first.id, records);
  if (claims.length === 0) return first.kind === 'void' ? undefined : first;
  const winner = claims.reduce(laterWritten);
  return winner.kind === 'void' ? undefined : lastWord(winner, records);
}

function recordsThatCount(records: readonly BookRecord[]): BookRecord[] {
  const ids = new Set(records.map((record) => record.id));
  const firstWritings = records.filter((record) => {
    const claims = record.kind === 'void' ? record.voids : record.replaces;
    return claims === undefined || !ids.has(claims);
  });
  // Most records are claimed by nobody: only those that are need the walk.
  const claimed = records.filter((record) => record.kind === 'void' || record.replaces);
  return firstWritings
    .map((first) => lastWord(first, claimed))
    .filter((record) => record !== undefined);
}

/**
 * The record that an id stands for today: back to its first writing, then down to the last word.
 */
function standsFor(id: string, records: readonly BookRecord[]): BookRecord | undefined {
  let first = records.find((record) => record.id === id);
  for (let back = first; back !== undefined; ) {
    first = back;
    const claims: string | undefined = back.kind === 'void' ? back.voids : back.replaces;
    back = records.find((record) => record.id === claims);
  }
  return first === undefined ? undefined : lastWord(first, records);
}

interface PriceDay {
  readonly product: string;
  readonly day: string;
  readonly price: number;
  readonly isFirst: boolean;
}

/** Every product's prices with the first day of each, in the order of days. */
function priceDays(records: readonly BookRecord[], counting: readonly BookRecord[]): PriceDay[] {
  const seasons = counting.filter((record) => record.kind === 'season');
  const starts = seasons.length === 0 ? '' : seasons.reduce(laterOf).starts;
  const everNamed = records.filter((record) => record.kind === 'product');
  const days: PriceDay[] = [];
  for (const product of new Set(everNamed.map((record) => record.product))) {
    const own = everNamed.filter((record) => record.product === product);
    const inForce = own.filter((record) => counting.includes(record));
    // Goods whose every price record was removed keep the price they had.
    const stated = inForce.length === 0 ? own : inForce;
    const byDay = new Map<string, RecordOf<'product'>>();
    for (const record of stated) {
      const day = record.from ?? starts;
      byDay.set(day, laterOf(byDay.get(day) ?? record, record));
    }
    const inOrder = [...byDay].sort(([a], [b]) => (a < b ? -1 : 1));
    inOrder.forEach(([day, { price }], index) => {
      days.push({ product, day, price, isFirst: index === 0 });
    });
  }
  return days;
}

function laterOf<R extends BookRecord>(a: R, b: R): R {
  return laterWritten(a, b) === a ? a : b;
}

/** The last price whose first day has come, or else the first of all; 0 for an unknown product. */
function priceOf(product: string, day: string, prices: readonly PriceDay[]): number {
  const own = prices.filter((step) => step.product === product);
  const begun = own.filter((step) => step.day <= day);
  return (begun.at(-1) ?? own[0])?.price ?? 0;
}

/** On the first day of a new price the units in the stockroom change their worth. */
function revaluationOn(
  day: string,
  prices: readonly PriceDay[],
  totals: ReadonlyMap<string, number>,
): AuditLine[] {
  return prices
    .filter((step) => step.day === day && !step.isFirst)
    .flatMap(({ product, price }) => {
      const units = totals.get(JSON.stringify(['stock', 'stockroom', product])) ?? 0;
      const before = prices.filter((step) => step.product === product && step.day < day).at(-1);
      const rise = units * (price - (before?.price ?? price));
      return [
        { ledger: 'money', account: 'goods', of: '', amount: rise },
        { ledger: 'money', account: 'losses', of: '', amount: -rise },
      ];
    });
}

function asAccounts(totals: ReadonlyMap<string, number>): AuditedBalances {
  const found: AuditedBalances = { stock: {}, money: {}, credit: {} };
  for (const key of [...totals.keys()].sort()) {
    const amount = totals.get(key) ?? 0;
    const [ledger, account, of]: string[] = JSON.parse(key);
    if (amount === 0 || account === undefined || of === undefined) continue;
    if (ledger === 'money') found.money[account] = amount;
    else {
      const table = ledger === 'stock' ? found.stock : found.credit;
      const accounts = table[of] ?? {};
      table[of] = accounts;
      accounts[account] = amount;
    }
  }
  return found;
}
