import type { Ledger } from '../../ledger/ledger.ts';
import { priceOfLines } from '../../ledger/posting.ts';
import type { Lines } from '../../records/fields.ts';
import type { MovementRecord } from '../../records/record.ts';

/** The sorts of line by which the book and the supplier's statement are held together. */
export type EntrySort =
  | 'delivery'
  | 'swap-in'
  | 'swap-out'
  | 'exchange'
  | 'debit'
  | 'debit-returned'
  | 'card'
  | 'posted'
  | 'online'
  | 'gift'
  | 'proceeds';

/** What one record says should be on the supplier's statement; a posted order shows as two. */
export interface SupplierEntry {
  readonly record: string;
  readonly sort: EntrySort;
  readonly date: string;
  /** Whole units by product; empty where it is about money alone. */
  readonly goods: Lines;
  /** Minor units without a sign: the price of the goods, or the money. */
  readonly cents: number;
  /** What it adds to the supplier's account in the book: minus is owed by the group. */
  readonly effect: number;
  /** Slip or order number. */
  readonly reference: string | undefined;
  readonly neighbour: string | undefined;
}

/** Entries of every record that the supplier should know of, by day. */
export function supplierEntries(ledger: Ledger): SupplierEntry[] {
  return ledger.movements().flatMap((movement) => entriesOf(ledger, movement));
}

function entriesOf(ledger: Ledger, movement: MovementRecord): SupplierEntry[] {
  const base = { record: movement.id, date: movement.date, goods: {}, neighbour: undefined };
  const price = (lines: Lines) => priceOfLines(lines, movement.date, ledger);
  const money = (sort: EntrySort, cents: number, sign: 1 | -1, reference?: string) => [
    { ...base, sort, cents, effect: sign * cents, reference },
  ];
  const goods = (sort: EntrySort, lines: Lines, sign: 1 | -1, more: Partial<SupplierEntry>) => {
    const cents = price(lines);
    return [
      { ...base, reference: undefined, sort, goods: lines, cents, effect: sign * cents, ...more },
    ];
  };
  switch (movement.kind) {
    case 'delivery':
      return goods('delivery', movement.lines, -1, { reference: movement.slip });
    case 'swap-in':
    case 'swap-out': {
      const { kind, lines, slip: reference, neighbour } = movement;
      return goods(kind, lines, kind === 'swap-in' ? -1 : 1, { reference, neighbour });
    }
    case 'exchange':
      return goods('exchange', movement.lines, 1, { cents: 0, effect: 0 });
    case 'online': {
      const { order: reference, lines, paid, sent } = movement;
      const posted = sent === 'post' ? goods('posted', lines, -1, { reference }) : [];
      return [...posted, ...money('online', paid, 1, reference)];
    }
    case 'gift':
      if (movement.from !== 'supplier') return [];
      return goods('gift', movement.lines, -1, { reference: movement.order });
    case 'card-settle':
      return movement.to === 'supplier' ? money('card', movement.cents, 1) : [];
    case 'debit':
      return money('debit', movement.cents, 1);
    case 'debit-returned':
      return money('debit-returned', debitCents(ledger, movement.debit), -1);
    case 'settle':
      return money('proceeds', movement.proceeds, 1);
    default:
      return [];
  }
}

function debitCents(ledger: Ledger, id: string): number {
  const debit = ledger.standing.currentOf(id);
  return debit?.kind === 'debit' ? debit.cents : 0;
}
