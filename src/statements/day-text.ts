import { type Words, wordsEn } from './words-en.ts';

/**
 * A calendar day (`YYYY-MM-DD`) as people read it without mistaking month and day: `12 Mar 2027`.
 * What is not a day comes back as it is.
 */
export function dayText(day: string, words: Words = wordsEn): string {
  const [year = '', month = '', date = ''] = day.split('-');
  const name = words.months[Number(month) - 1];
  return name === undefined ? day : `${Number(date)} ${name} ${year}`;
}
