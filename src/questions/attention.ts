import { addDays } from '../base/day.ts';
import { byText } from '../base/order.ts';
import { sum } from '../base/sum.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { priceOfLines } from '../ledger/posting.ts';
import type { ClosingItem } from './closing/closing-item.ts';
import { closingParts } from './closing-list.ts';
import { debitMornings } from './debits/debit-mornings.ts';

/** Something to see to, with what its place in the queue goes by. */
export interface AttentionItem {
  readonly item: ClosingItem;
  /** The day on which it should have been seen to; missing where no day presses. */
  readonly due?: string;
  /** Money that hangs on it (minor units), goods at the price of the day; 0 for credit. */
  readonly minor: number;
  /** Of a debit to come: what is missing for it on its morning, 0 where nothing is. */
  readonly short?: number;
}

/** Days ahead within which a date presses. */
const AHEAD_DAYS = 7;

/**
 * What needs attention, first what has a day within a week or before, the earliest day first, then
 * the rest by the money that hangs on it; ties in the order of the closing list. It yields between
 * the parts of that list, so that a screen can rest in between.
 */
export function* attention(
  ledger: Ledger,
  today: string,
): Generator<undefined, readonly AttentionItem[]> {
  const found: AttentionItem[] = [];
  const short = new Map(debitMornings(ledger, today).map((each) => [each.deadline, each.short]));
  for (const items of closingParts(ledger, today)) {
    for (const item of items) found.push(...pressing(ledger, item, today, short));
    yield undefined;
  }
  return found.sort((a, b) => byText(a.due ?? NEVER, b.due ?? NEVER) || b.minor - a.minor);
}

/** @param short what is missing for each debit to come on its morning, by its deadline */
function pressing(
  ledger: Ledger,
  item: ClosingItem,
  today: string,
  short: ReadonlyMap<string, number>,
): AttentionItem[] {
  const deadline = item.next === 'mind_the_date' ? dayOfDeadline(ledger, item) : undefined;
  const until = addDays(today, AHEAD_DAYS);
  if (item.state !== 'open' && (deadline === undefined || deadline > until)) return [];
  const due = deadline ?? dueOf(ledger, item, today);
  const missing = short.get(item.item.slice('deadline:'.length));
  const minor = missing ?? moneyOf(ledger, item, today);
  return [
    { item, minor, ...(due && { due }), ...(missing === undefined ? {} : { short: missing }) },
  ];
}

const NEVER = '9999-12-31';

function dayOfDeadline(ledger: Ledger, { item }: ClosingItem): string | undefined {
  const id = item.slice('deadline:'.length);
  return ledger.setup.season?.deadlines?.find(({ deadline }) => deadline === id)?.date;
}

/** An amount not announced presses from its day on, a stall from the day it was held. */
function dueOf(ledger: Ledger, { item, cause }: ClosingItem, today: string): string | undefined {
  switch (cause?.kind) {
    case 'debit_not_as_announced':
      return cause.date;
    case 'account_too_low':
      return cause.date >= today ? cause.date : undefined;
    case 'stop_sale':
      return today;
    case 'not_settled': {
      const starts = ledger.setup.stalls.get(item.slice('stall:'.length))?.starts.slice(0, 10);
      return starts !== undefined && starts <= today ? starts : undefined;
    }
    default:
      return undefined;
  }
}

/** Credit is never money: a pool not yet shared weighs nothing here. */
function moneyOf(ledger: Ledger, { left, lines, group }: ClosingItem, day: string): number {
  if (group === 'goods') {
    const units = Object.entries(lines ?? {}).map(([product, many]) => [product, Math.abs(many)]);
    return priceOfLines(Object.fromEntries(units), day, ledger);
  }
  if (group !== 'money' && group !== 'families') return 0;
  return sum(Object.values(left).map(Math.abs));
}
