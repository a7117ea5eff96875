import { unreachable } from '../base/assert.ts';
import type { MatchReason } from '../questions/match/bank-matching.ts';
import type { Say } from '../words/say.ts';
import { joined } from './joined.ts';
import { sentence } from './sentence.ts';

/** Why a line of the bank's statement and records of the book go together. */
export function matchWords(why: MatchReason, say: Say): string {
  switch (why.kind) {
    case 'accepted':
      return say`Taken for this record before.`;
    case 'same_amount_and_day':
      return say`Same amount, same day, and no other that it could be.`;
    case 'same_amount_and_slip': {
      const slip = say`Same amount, and the bank names the slip`;
      return sentence(joined([slip, daysLater(why.days, 'bank', say)], say), say);
    }
    case 'same_amount': {
      const amount = joined([say`Same amount`, daysLater(why.days, 'bank', say)], say);
      return withOthers(amount, why.others, say);
    }
    case 'records_together':
      return why.count === 1
        ? say`The parts of one record come to this amount.`
        : recordsTogether(why.count, say);
    case 'lines_together':
      return say.count(
        why.count,
      )`# line together comes to the record's amount.|# lines together come to the record's
        amount.`;
    default:
      return unreachable(why);
  }
}

export function recordsTogether(count: number, say: Say): string {
  return say.count(count)`# record together comes to this amount.|# records together come to this
    amount.`;
}

/** `same day` or `at the bank 2 days later`. */
export function daysLater(days: number, where: 'bank' | 'there', say: Say): string {
  if (days === 0) return say`same day`;
  const away = Math.abs(days);
  if (where === 'bank') {
    return days > 0
      ? say.count(away)`at the bank # day later|at the bank # days later`
      : say.count(away)`at the bank # day earlier|at the bank # days earlier`;
  }
  return days > 0
    ? say.count(away)`there # day later|there # days later`
    : say.count(away)`there # day earlier|there # days earlier`;
}

/** The reason as a sentence, with how many others could be meant. */
export function withOthers(reason: string, others: number, say: Say): string {
  if (others === 0) return sentence(reason, say);
  return say.count(others)`${reason}; # other could be meant.|${reason}; # others could be meant.`;
}
