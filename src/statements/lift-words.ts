import type { LiftAllowed } from '../questions/share/lift-allowed.ts';
import type { Say } from '../words/say.ts';

/** Why the choice has to come first, in one line. */
export function liftWhy(say: Say): string {
  return say`It has to be chosen before anybody knows whose step it would reach: then it is a rule
    for all.`;
}

/** Whether pools may be lifted, and if not, why and what stands instead. */
export function liftAllowedWords(answer: LiftAllowed, say: Say): string {
  if (answer.allowed) return say`Chosen on ${say.day(answer.since)}, before the first stall.`;
  if (answer.why === 'not_chosen') {
    return say`This group shares its pools by the rule of its set-up; lifts are not switched on.`;
  }
  return say`Lifts were switched on on ${say.day(answer.since)}, the first stall was on
    ${say.day(answer.firstStall)}. They count from the next season.`;
}
