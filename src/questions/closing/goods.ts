import type { Ledger } from '../../ledger/ledger.ts';
import type { RecordOf } from '../../records/record.ts';
import { countDifference, countsLastFirst } from '../count-difference.ts';
import {
  type ClosingCause,
  type ClosingContext,
  type ClosingItem,
  idsBehind,
  unitsLeft,
} from './closing-item.ts';

/**
 * The stockroom was counted after the last goods moved, and the count agrees product by product.
 */
export function stockroomCounted(context: ClosingContext): readonly ClosingItem[] {
  const moved = context.recordsOf('stock', 'stockroom');
  const lastMoved = moved.at(-1);
  const base = { item: 'stockroom-counted', group: 'goods' } as const;
  if (lastMoved === undefined) {
    return [{ ...base, state: 'not-needed', left: {}, records: [], next: 'nothing' }];
  }
  const count = countsLastFirst(context.ledger)[0];
  const cause = countCause(context.ledger, count, lastMoved.date);
  if (cause === undefined) {
    const records = count === undefined ? [] : [count.id];
    return [{ ...base, state: 'done', left: {}, records, next: 'nothing' }];
  }
  const differs = cause.kind === 'count_differs' && count !== undefined;
  const lines = differs ? stockroomDifference(context.ledger, count) : {};
  const touching = moved.filter((record) => differs && touchesAny(record, lines));
  return [
    {
      ...base,
      state: 'open',
      left: differs ? { stockroom: unitsLeft(lines) } : {},
      ...(differs ? { lines } : {}),
      records: [...touching.map((record) => record.id), ...(count === undefined ? [] : [count.id])],
      cause,
      next: differs ? 'count_again_or_find_the_record' : 'count_the_stockroom',
    },
  ];
}

function countCause(
  ledger: Ledger,
  count: RecordOf<'count'> | undefined,
  moved: string,
): ClosingCause | undefined {
  if (count === undefined) return { kind: 'never_counted' };
  if (Object.keys(stockroomDifference(ledger, count)).length > 0) {
    return { kind: 'count_differs', counted: count.date };
  }
  if (count.date < moved) return { kind: 'goods_moved_after_count', counted: count.date, moved };
  return undefined;
}

/** Counted less book by product, agreeing products left out: over is positive, short negative. */
function stockroomDifference(ledger: Ledger, count: RecordOf<'count'>): Record<string, number> {
  const differing = countDifference(ledger, count).products.filter(
    (product) => product.difference !== 0,
  );
  return Object.fromEntries(differing.map(({ product, difference }) => [product, difference]));
}

function touchesAny(record: object, lines: Readonly<Record<string, number>>): boolean {
  const parts = Object.values(record).filter((part) => typeof part === 'object' && part !== null);
  return parts.some((part) => Object.keys(lines).some((product) => Object.hasOwn(part, product)));
}

/** Nothing is left on the shelf, or what is left has been decided on. */
export function stockroomEmpty(context: ClosingContext): readonly ClosingItem[] {
  const base = { item: 'stockroom', group: 'goods' } as const;
  const records = idsBehind(context, 'stock', 'stockroom');
  const lines = context.ledger.balances.linesOf('stock', 'stockroom');
  if (Object.keys(lines).length === 0) {
    const state = records.length === 0 ? 'not-needed' : 'done';
    return [{ ...base, state, left: {}, records: [], next: 'nothing' }];
  }
  const missing = Object.values(lines).some((units) => units < 0);
  return [
    {
      ...base,
      state: 'open',
      left: { stockroom: unitsLeft(lines) },
      lines,
      records,
      cause: { kind: missing ? 'more_out_than_in' : 'goods_are_unsold' },
      next: missing ? 'find_the_missing_delivery' : 'decide_on_unsold_goods',
    },
  ];
}

/** A stop-sale that stands while units of the product are still about. */
export function goodsOnHold(context: ClosingContext): readonly ClosingItem[] {
  const items: ClosingItem[] = [];
  for (const hold of context.ledger.setup.holds.values()) {
    if (hold.lifted === true) continue;
    const units = context.ledger.balances.stockOf('stockroom', hold.product);
    items.push({
      item: `hold:${hold.product}`,
      group: 'goods',
      state: units === 0 ? 'done' : 'open',
      left: units === 0 ? {} : { stockroom: Math.abs(units) },
      ...(units === 0 ? {} : { lines: { [hold.product]: units } }),
      records: [hold.id],
      cause: { kind: 'stop_sale', product: hold.product, reason: hold.reason },
      next: units === 0 ? 'nothing' : 'keep_the_goods_back',
    });
  }
  return items;
}
