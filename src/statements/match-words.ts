import { unreachable } from '../base/assert.ts';
import type { MatchReason } from '../questions/match/bank-matching.ts';

/** Why a line of the bank's statement and records of the book go together. */
export function matchWords(why: MatchReason): string {
  switch (why.kind) {
    case 'accepted':
      return 'Taken for this record before.';
    case 'same_amount_and_day':
      return 'Same amount, same day, and no other that it could be.';
    case 'same_amount_and_slip':
      return `Same amount, and the bank names the slip${daysLater(why.days, 'at the bank')}.`;
    case 'same_amount':
      return `Same amount${daysLater(why.days, 'at the bank')}${othersMeant(why.others)}.`;
    case 'records_together':
      return why.count === 1
        ? 'The parts of one record come to this amount.'
        : `${why.count} records together come to this amount.`;
    case 'lines_together':
      return `${why.count} lines together come to the record's amount.`;
    default:
      return unreachable(why);
  }
}

/** `, same day` or `, at the bank 2 days later`. */
export function daysLater(days: number, where: string): string {
  if (days === 0) return ', same day';
  const count = Math.abs(days) === 1 ? '1 day' : `${Math.abs(days)} days`;
  return days > 0 ? `, ${where} ${count} later` : `, ${where} ${count} earlier`;
}

/** `; 1 other could be meant`, or nothing. */
export function othersMeant(others: number): string {
  if (others === 0) return '';
  return others === 1 ? '; 1 other could be meant' : `; ${others} others could be meant`;
}
