import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord } from '../../records/record.ts';

/**
 * What a card payout may stand for on a day: the takings that wait, oldest first, summed up from
 * the oldest to each of the others, and the takings of each day alone (minor units, the largest
 * sums first).
 */
export function cardsWaiting(ledger: Ledger, day: string): number[] {
  const waiting: { readonly date: string; cents: number }[] = [];
  for (const movement of ledger.movements()) {
    if (movement.date > day) continue;
    const cents = cardTakings(movement);
    const last = waiting.at(-1);
    if (cents > 0 && last?.date === movement.date) last.cents += cents;
    else if (cents > 0) waiting.push({ date: movement.date, cents });
    let gone = goneFromCards(movement);
    for (const each of waiting) {
      const part = Math.min(gone, each.cents);
      each.cents -= part;
      gone -= part;
    }
  }
  const left = waiting.map(({ cents }) => cents).filter((cents) => cents > 0);
  const sums = left.map((_, at) => left.slice(0, at + 1).reduce((a, b) => a + b, 0));
  return [...new Set([...sums, ...left])].sort((a, b) => b - a);
}

function cardTakings(movement: MovementRecord): number {
  if (movement.kind === 'stall-close') return movement.cards;
  return movement.kind === 'payment' && movement.tender === 'card' ? movement.cents : 0;
}

/** Settled takings, oldest first, and what was paid back by card. */
function goneFromCards(movement: MovementRecord): number {
  if (movement.kind === 'card-settle') return movement.cents + (movement.fee ?? 0);
  return movement.kind === 'refund' && movement.tender === 'card' ? movement.cents : 0;
}
