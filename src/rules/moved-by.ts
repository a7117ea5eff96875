import type { Ledger } from '../ledger/ledger.ts';
import type { Mover } from '../ledger/posting.ts';
import type { MovementRecord } from '../records/record.ts';

/** All that a movement moves, units and minor units together: a measure of size, no balance. */
export function movedBy(ledger: Ledger, movement: MovementRecord): number {
  let moved = 0;
  const meter: Mover = {
    stock: (_product, units) => {
      moved += Math.abs(units);
    },
    money: (minor) => {
      moved += Math.abs(minor);
    },
    credit: (_product, units) => {
      moved += Math.abs(units);
    },
  };
  ledger.postingsTo(movement, meter);
  return moved;
}
