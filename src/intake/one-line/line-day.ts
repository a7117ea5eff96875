import { addDays, daysBetween, isDay } from '../../base/day.ts';
import { dayWords, lastWords, monthWords, phrasesOf, weekdayWords } from './line-words.ts';

/**
 * A day as people write it: `yesterday`, `friday`, `last friday`, `2027-04-03`, `3 apr`, `april 3`,
 * `3 de abril de 2027`, `3/4`. Several days where it may mean several (3/4 is 3 April or March 4).
 */

const YEAR_MONTHS = 12;
/** A Monday, from which days of the week are counted. */
const MONDAY = '1970-01-05';

const BACK = new Map(
  dayWords.flatMap((row) => phrasesOf(row).map((phrase): [string, number] => [phrase, row.back])),
);
const WEEKDAYS = places(weekdayWords);
const MONTHS = places(monthWords);
const LAST: ReadonlySet<string> = new Set(phrasesOf(lastWords));
const BETWEEN: ReadonlySet<string> = new Set(['of', 'de', 'del', 'the']);

/** The days that these plain words may mean, empty where they are no day. */
export function daysMeant(words: readonly string[], today: string): string[] {
  const back = BACK.get(words.join(' '));
  if (back !== undefined) return [addDays(today, -back)];
  const weekday = weekdayMeant(words, today);
  if (weekday !== undefined) return [weekday];
  const only = words.length === 1 ? (words[0] ?? '') : '';
  if (isDay(only)) return [only];
  return only === '' ? monthNamed(words, today) : slashed(only, today);
}

function weekdayMeant(words: readonly string[], today: string): string | undefined {
  const isLast = words.length === 2 && words.some((word) => LAST.has(word));
  const name = isLast ? words.find((word) => !LAST.has(word)) : words.join(' ');
  const wanted = WEEKDAYS.get(name ?? '');
  if (wanted === undefined) return undefined;
  const now = ((daysBetween(MONDAY, today) % 7) + 7) % 7;
  const back = (now - wanted + 7) % 7;
  return addDays(today, -(isLast && back === 0 ? 7 : back));
}

/** `3 apr`, `apr 3`, `3 de abril de 2027`. */
function monthNamed(said: readonly string[], today: string): string[] {
  const words = said.filter((word) => !BETWEEN.has(word));
  const isMonthFirst = MONTHS.has(words[0] ?? '');
  const [name = '', date = ''] = isMonthFirst ? words : [words[1], words[0]];
  const month = MONTHS.get(name);
  const isWhole = words.length === 2 || words.length === 3;
  // A line that ends in `of` is not a day yet, and would swallow the word that is to come.
  const isEven = !BETWEEN.has(said[0] ?? '') && !BETWEEN.has(said.at(-1) ?? '');
  if (month === undefined || !isWhole || !isEven || !/^\d{1,2}$/.test(date)) return [];
  return dayIn(words[2], month + 1, Number(date), today);
}

/** `3/4`, `3/4/27`: day and month, or month and day. */
function slashed(word: string, today: string): string[] {
  const [, first = '', second = '', year] =
    /^(\d{1,2})\/(\d{1,2})(?:\/(\d{2,4}))?$/.exec(word) ?? [];
  if (first === '') return [];
  const [a, b] = [Number(first), Number(second)];
  const days = [...new Set([...dayIn(year, b, a, today), ...dayIn(year, a, b, today)])];
  // Records are of what has happened: a day to come is meant only where no other is possible.
  const happened = days.filter((day) => day <= today);
  return happened.length > 0 ? happened : days;
}

/** The day of a month; without a year the one that is nearest to today. */
function dayIn(year: string | undefined, month: number, date: number, today: string): string[] {
  if (month > YEAR_MONTHS) return [];
  if (year !== undefined) {
    if (!/^(?:\d{2}|\d{4})$/.test(year)) return [];
    const day = dayText(year.length === 2 ? 2000 + Number(year) : Number(year), month, date);
    return isDay(day) ? [day] : [];
  }
  const now = Number(today.slice(0, 4));
  const days = [now, now - 1, now + 1].map((each) => dayText(each, month, date)).filter(isDay);
  const far = (day: string) => Math.abs(daysBetween(today, day));
  const nearest = days.sort((a, b) => far(a) - far(b))[0];
  return nearest === undefined ? [] : [nearest];
}

function dayText(year: number, month: number, date: number): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

function places(rows: readonly Parameters<typeof phrasesOf>[0][]): ReadonlyMap<string, number> {
  return new Map(
    rows.flatMap((row, at) => phrasesOf(row).map((phrase): [string, number] => [phrase, at])),
  );
}
