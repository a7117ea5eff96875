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

/** Units to bring, products together. */
export function unitsToBring(seller: string, movements: readonly MovementRecord[]): number {
  let units = 0;
  for (const queue of goodsToBring(seller, movements).values()) {
    for (const order of queue) units += order.units;
  }
  return units;
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
  if (record.kind === 'handover' && record.seller === seller) return record.lines;
  if (record.kind === 'pass' && record.to === seller) return record.lines;
  return {};
}
