import { sum } from '../base/sum.ts';
import type { MovementRecord } from '../records/record.ts';

/** Units of an order paid online that its seller brings and that have not gone out yet. */
export interface ToBring {
  readonly units: number;
  /** The day of the order. */
  readonly date: string;
}

/**
 * Orders paid online that the seller brings, by product, as far as no goods went out to the seller
 * on or after the order's day to fill them. Goods out fill the oldest order first.
 *
 * @param movements counting movements, by the day they happened
 */
export function goodsToBring(
  seller: string,
  movements: readonly MovementRecord[],
): ReadonlyMap<string, readonly ToBring[]> {
  const waiting = new Map<string, { units: number; date: string }[]>();
  for (const record of movements) {
    if (record.kind === 'online' && record.sent === 'hand' && record.seller === seller) {
      for (const product in record.lines) {
        const queue = waiting.get(product) ?? [];
        queue.push({ units: record.lines[product] ?? 0, date: record.date });
        waiting.set(product, queue);
      }
    } else {
      fillOrders(waiting, goodsIn(record, seller));
    }
  }
  return waiting;
}

/**
 * Units to bring by seller, products together; sellers that bring no order are left out.
 *
 * @param movements counting movements, by the day they happened
 */
export function unitsToBring(movements: readonly MovementRecord[]): ReadonlyMap<string, number> {
  const units = new Map<string, number>();
  for (const [seller, own] of movementsByBringer(movements)) {
    const queues = [...goodsToBring(seller, own).values()];
    units.set(seller, sum(queues.flat().map((order) => order.units)));
  }
  return units;
}

/** What decides about each bringing seller's orders, in one pass over the book. */
function movementsByBringer(
  movements: readonly MovementRecord[],
): ReadonlyMap<string, readonly MovementRecord[]> {
  const own = new Map<string, MovementRecord[]>();
  for (const record of movements) {
    if (record.kind === 'online' && record.sent === 'hand' && record.seller !== undefined) {
      const before = own.get(record.seller);
      if (before === undefined) own.set(record.seller, [record]);
      else before.push(record);
    } else {
      const seller = receiverOf(record);
      if (seller !== undefined) own.get(seller)?.push(record);
    }
  }
  return own;
}

function fillOrders(
  waiting: Map<string, { units: number; date: string }[]>,
  lines: Readonly<Record<string, number>>,
): void {
  for (const product in lines) {
    let units = lines[product] ?? 0;
    for (const order of waiting.get(product) ?? []) {
      const filled = Math.min(order.units, units);
      order.units -= filled;
      units -= filled;
    }
  }
}

/** Goods that come to a seller with a record. */
function goodsIn(record: MovementRecord, seller: string): Readonly<Record<string, number>> {
  const comes = record.kind === 'handover' || record.kind === 'pass';
  return comes && receiverOf(record) === seller ? record.lines : {};
}

function receiverOf(record: MovementRecord): string | undefined {
  if (record.kind === 'handover') return record.seller;
  return record.kind === 'pass' ? record.to : undefined;
}
