import type { Ledger } from '../ledger/ledger.ts';
import { priceOfLines } from '../ledger/posting.ts';
import type { MovementRecord, RecordOf } from '../records/record.ts';
import type { CreditParts } from './closing/closing-item.ts';
import { goodsToBring } from './goods-to-bring.ts';

/**
 * Tells apart why a seller's account is in credit. The three parts add up to the credit.
 *
 * The order of the reading is written here because it decides what the volunteer is told: first
 * gift units paid online and not yet recorded, then paid orders whose goods were not handed over
 * after the order came in, then the rest as paid too much, as far as the family paid anything.
 *
 * @param credit minor units the account is in credit, more than 0
 * @param movements the seller's counting movements, by the day they happened
 */
export function creditParts(
  ledger: Ledger,
  seller: string,
  credit: number,
  movements: readonly MovementRecord[],
): CreditParts {
  const gifts = Math.min(credit, giftsNotRecorded(ledger, seller, movements));
  const ordered = handOrders(seller, movements);
  let waiting = Math.min(credit - gifts, goodsNotHandedOver(ledger, seller, movements));
  let paidTooMuch = credit - gifts - waiting;
  const unexplained = paidTooMuch - Math.min(paidTooMuch, paidByFamily(seller, movements));
  // What the family cannot have paid too much must still be goods that were paid for online.
  if (ordered.length > 0) {
    waiting += unexplained;
    paidTooMuch -= unexplained;
  }
  return { waiting, gifts, paidTooMuch };
}

/** Minor units of gift units bought online with the seller, less those recorded as given. */
function giftsNotRecorded(
  ledger: Ledger,
  seller: string,
  movements: readonly MovementRecord[],
): number {
  let value = 0;
  for (const record of movements) {
    if (record.kind === 'online' && record.seller === seller) {
      value += priceOfLines(record.gifts ?? {}, record.date, ledger);
    }
    if (record.kind === 'gift' && record.seller === seller) {
      value -= priceOfLines(record.lines, record.date, ledger);
    }
  }
  return Math.max(0, value);
}

/** Minor units of goods in orders paid online that the seller brings and has not taken over. */
function goodsNotHandedOver(
  ledger: Ledger,
  seller: string,
  movements: readonly MovementRecord[],
): number {
  const waiting = goodsToBring(seller, movements);
  let value = 0;
  for (const [product, queue] of waiting) {
    for (const order of queue) value += order.units * ledger.priceOn(product, order.date);
  }
  return value;
}

function handOrders(seller: string, movements: readonly MovementRecord[]): RecordOf<'online'>[] {
  return movements.filter(
    (record): record is RecordOf<'online'> =>
      record.kind === 'online' && record.sent === 'hand' && record.seller === seller,
  );
}

function paidByFamily(seller: string, movements: readonly MovementRecord[]): number {
  let paid = 0;
  for (const record of movements) {
    if (record.kind === 'payment' && record.seller === seller) paid += record.cents;
    if (record.kind === 'refund' && record.seller === seller) paid -= record.cents;
  }
  return Math.max(0, paid);
}
