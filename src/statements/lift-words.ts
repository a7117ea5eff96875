import type { LiftAllowed } from '../questions/share/lift-allowed.ts';
import { dayText } from './day-text.ts';

/** Why the choice has to come first, in one line. */
export const LIFT_WHY =
  'It has to be chosen before anybody knows whose step it would reach: then it is a rule for all.';

/** Whether pools may be lifted, and if not, why and what stands instead. */
export function liftAllowedWords(answer: LiftAllowed): string {
  if (answer.allowed) return `Chosen on ${dayText(answer.since)}, before the first stall.`;
  if (answer.why === 'not_chosen') {
    return 'This group shares its pools by the rule of its set-up; lifts are not switched on.';
  }
  return (
    `Lifts were switched on on ${dayText(answer.since)}, the first stall was on ` +
    `${dayText(answer.firstStall)}. They count from the next season.`
  );
}
