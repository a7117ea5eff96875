import { unreachable } from '../base/assert.ts';
import type { MatchReason } from '../questions/match/match-bank.ts';

/** Why a line of the bank's statement and records of the book go together. */
export function matchWords(why: MatchReason): string {
  switch (why.kind) {
    case 'same_amount_and_day':
      return 'Same amount, same day, and no other that it could be.';
    case 'same_amount_and_slip':
      return `Same amount, and the bank names the slip${later(why.days)}.`;
    case 'same_amount':
      return `Same amount${later(why.days)}${rivals(why.others)}.`;
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

function later(days: number): string {
  if (days === 0) return ', same day';
  const count = Math.abs(days) === 1 ? '1 day' : `${Math.abs(days)} days`;
  return days > 0 ? `, at the bank ${count} later` : `, at the bank ${count} earlier`;
}

function rivals(others: number): string {
  if (others === 0) return '';
  return others === 1 ? '; 1 other could be meant' : `; ${others} others could be meant`;
}
