import { isDay } from '../../../base/day.ts';
import { byText } from '../../../base/order.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import { say } from '../../say.ts';

/**
 * Days on which no bank books, as typed: one a line, or parted by commas. Refused is the first that
 * is no day; a day that is written twice counts once.
 */
export function readHolidays(text: string): Outcome<string[], string> {
  const said = text.split(/[\s,;]+/).filter((each) => each !== '');
  const wrong = said.find((each) => !isDay(each));
  if (wrong !== undefined) {
    return refused(say`“${wrong}” is no day. Write each as year, month, day: 2027-05-31.`);
  }
  return done([...new Set(said)].sort(byText));
}
