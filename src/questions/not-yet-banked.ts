import type { Ledger } from '../ledger/ledger.ts';
import type { MovementRecord, RecordOf } from '../records/record.ts';

/** Cash and cheques of one payment or stall that wait to be brought to the bank. */
export interface Receipt {
  readonly record: RecordOf<'payment'> | RecordOf<'stall-close'>;
  /** Minor units that wait: less than the record's own where an earlier deposit took a part. */
  readonly cents: number;
}

/**
 * What a deposit may hold, oldest first. A deposit that names its receipts took those; one that
 * names none took the oldest that waited then, as far as its amount goes, and so did a refund out
 * of the cash box. Card takings are not among them: they never lie in the cash box.
 */
export function notYetBanked(ledger: Ledger): Receipt[] {
  const movements = ledger.movements();
  const named = namedInDeposits(ledger, movements);
  let waiting: Receipt[] = [];
  for (const movement of movements) {
    waiting = withoutOldest(waiting, takenUnnamed(movement));
    const receipt = receiptOf(movement);
    if (receipt !== undefined && !named.has(movement.id)) waiting.push(receipt);
  }
  return waiting;
}

/** What a record put into the cash box; undefined where it put nothing there. */
export function receiptOf(record: MovementRecord): Receipt | undefined {
  if (record.kind === 'payment') {
    return record.tender === 'card' ? undefined : { record, cents: record.cents };
  }
  if (record.kind !== 'stall-close') return undefined;
  const cents = record.cash - record.float + record.cheques;
  return cents > 0 ? { record, cents } : undefined;
}

/** Minor units of several receipts together. */
export function sumOfReceipts(receipts: readonly Receipt[]): number {
  return receipts.reduce((sum, { cents }) => sum + cents, 0);
}

/** Ids of the receipts that deposits name, as they count today. */
function namedInDeposits(ledger: Ledger, movements: readonly MovementRecord[]): Set<string> {
  const named = new Set<string>();
  for (const movement of movements) {
    if (movement.kind !== 'deposit') continue;
    for (const id of movement.items ?? []) named.add(ledger.standing.currentOf(id)?.id ?? id);
  }
  return named;
}

/** Minor units that left the cash box without a word about which receipts they came from. */
function takenUnnamed(movement: MovementRecord): number {
  if (movement.kind === 'deposit') return movement.items === undefined ? movement.cents : 0;
  return movement.kind === 'refund' && movement.tender !== 'card' ? movement.cents : 0;
}

function withoutOldest(waiting: readonly Receipt[], cents: number): Receipt[] {
  if (cents === 0) return [...waiting];
  let taken = cents;
  const left: Receipt[] = [];
  for (const receipt of waiting) {
    const part = Math.min(taken, receipt.cents);
    taken -= part;
    if (part < receipt.cents) left.push({ ...receipt, cents: receipt.cents - part });
  }
  return left;
}
