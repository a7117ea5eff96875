import { assert } from '../base/assert.ts';
import { currencySign, minorDigits } from '../base/currency.ts';
import { isDay } from '../base/day.ts';
import type { Language } from './language.ts';

/**
 * Numbers, money and days as a language writes them, by Intl (ECMA-402, CLDR's data) with the
 * language's own tag. Amounts go to Intl as the digits of their whole number, never as a fraction,
 * so no cent is lost on the way.
 */
export interface Customs {
  /** Whole units: `12,000`. */
  units(units: number): string;
  /** A part of a unit, to two places: `0.4`. */
  parts(units: number): string;
  /** @param minor whole minor units @param currency ISO 4217 code */
  money(minor: number, currency: string): string;
  /** The amount without the currency's sign, for columns whose head names the currency. */
  amount(minor: number, currency: string): string;
  /** A day (`YYYY-MM-DD`) with its month as a word: `12 Mar 2027`; other text comes back. */
  day(day: string): string;
  /** Names one after the other: `Ada, Ben and Cleo`. */
  list(names: readonly string[]): string;
  /** The plural category of a number (CLDR). */
  category(number: number): Intl.LDMLPluralRule;
}

const MINUS = '\u2212';
const DAYS_KEPT_MAX = 4000;

export function customsOf({ tag, customs }: Language): Customs {
  const wholes = onDemand(() => new Intl.NumberFormat(customs));
  // American English would put one more comma before "and".
  const lists = onDemand(
    () => new Intl.ListFormat(tag === 'en' ? 'en-GB' : customs, { type: 'conjunction' }),
  );
  const parts = onDemand(
    () => new Intl.NumberFormat(customs, { maximumFractionDigits: 2, useGrouping: false }),
  );
  const plurals = onDemand(() => new Intl.PluralRules(customs));
  const days = onDemand(() => (tag === 'en' ? dayMonthYear(customs) : dayByCustom(customs)));
  const formats = new Map<string, Intl.NumberFormat>();
  const format = (currency: string, style: 'currency' | 'decimal'): Intl.NumberFormat => {
    const key = `${style} ${currency}`;
    const made = formats.get(key) ?? moneyFormat(customs, currency, style);
    formats.set(key, made);
    return made;
  };
  const written = (minor: number, currency: string, style: 'currency' | 'decimal'): string =>
    signed(format(currency, style).format(decimal(minor, minorDigits(currency))));
  return {
    units: (units) => signed(wholes().format(units + 0)),
    parts: (units) => signed(parts().format(units + 0)),
    money: (minor, currency) =>
      /^[A-Z]{3}$/.test(currency)
        ? written(minor, currency, 'currency')
        : `${currency}\u00a0${written(minor, 'XXX', 'decimal')}`,
    amount: (minor, currency) => written(minor, currency, 'decimal'),
    day: keptDays((milliseconds) => days()(milliseconds)),
    list: (names) => lists().format(names),
    category: (number) => plurals().select(number),
  };
}

/** Made when first asked for: the first Intl of each sort holds an old phone up for a moment. */
function onDemand<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** A currency whose sign is not surely known to readers is written by its code. */
function moneyFormat(
  customs: string,
  currency: string,
  style: 'currency' | 'decimal',
): Intl.NumberFormat {
  const digits = minorDigits(currency);
  return new Intl.NumberFormat(customs, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    style,
    ...(style === 'decimal'
      ? {}
      : { currency, currencyDisplay: currencySign(currency) ? 'narrowSymbol' : 'code' }),
  });
}

/** The digits of a whole number with the point put in; nothing is divided. */
function decimal(minor: number, digits: number): `${number}` {
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  const at = text.length - digits;
  const point = digits === 0 ? '' : '.';
  const written = `${minor < 0 ? '-' : ''}${text.slice(0, at)}${point}${text.slice(at)}`;
  assert(isDecimal(written), 'a whole number is written in digits');
  return written;
}

function isDecimal(text: string): text is `${number}` {
  return /^-?\d+(?:\.\d+)?$/.test(text);
}

function signed(text: string): string {
  return text.replace('-', MINUS);
}

type WriteDay = (milliseconds: number) => string;

const DAY_PARTS = { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' } as const;

function dayByCustom(customs: string): WriteDay {
  const format = new Intl.DateTimeFormat(customs, DAY_PARTS);
  return (milliseconds) => format.format(milliseconds);
}

/** English days stand in the order that no English reader mistakes. */
function dayMonthYear(customs: string): WriteDay {
  const format = new Intl.DateTimeFormat(customs, DAY_PARTS);
  return (milliseconds) => {
    const parts = format.formatToParts(milliseconds);
    const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
    return `${part('day')} ${part('month')} ${part('year')}`;
  };
}

/** Lists name the same days again and again, and Intl takes its time over each. */
function keptDays(write: WriteDay): (day: string) => string {
  const kept = new Map<string, string>();
  return (day) => {
    const known = kept.get(day);
    if (known !== undefined) return known;
    if (!isDay(day)) return day;
    const text = write(Date.parse(`${day}T00:00:00Z`));
    if (kept.size >= DAYS_KEPT_MAX) kept.clear();
    kept.set(day, text);
    return text;
  };
}
