import { sum } from '../base/sum.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { byWeek, type CalendarWeek, weeksHolding } from './calendar-weeks.ts';
import { type RunningLine, runningBalance } from './running-balance.ts';

/** The stockroom in one week, in units of all products together. */
export interface StockWeek extends CalendarWeek {
  /** Taken over from the supplier or from a neighbour group. */
  readonly delivered: number;
  /** Came in otherwise: brought back, found. */
  readonly back: number;
  /** Went out: to families, to stalls, passed on, given away, written off. */
  readonly out: number;
  /** In the stockroom by the book when the week ends; below 0 where more went out than came in. */
  readonly atEnd: number;
  /** The records of what was delivered. */
  readonly deliveries: readonly string[];
}

export interface StockByWeek {
  readonly weeks: readonly StockWeek[];
  /** Units delivered in all of them. */
  readonly delivered: number;
  /** Units in the stockroom after the last one: the ledger's own. */
  readonly now: number;
}

const SUPPLIES: ReadonlySet<string> = new Set(['delivery', 'swap-in']);

/** What the stockroom held at the end of each week, with what was delivered in it. */
export function stockByWeek(ledger: Ledger): StockByWeek {
  const stockroom = (account: string) => account === 'stockroom';
  const { lines, balance } = runningBalance(ledger, { ledger: 'stock', accounts: stockroom });
  const inWeek = byWeek(lines, ({ date }) => date);
  let atEnd = 0;
  const weeks = weeksHolding(lines.map(({ date }) => date)).map((week) => {
    const within = inWeek.get(week.from) ?? [];
    const supplies = within.filter((line) => isSupply(ledger, line));
    const others = within.filter((line) => !isSupply(ledger, line)).map(({ amount }) => amount);
    atEnd += sum(within.map(({ amount }) => amount));
    return {
      ...week,
      delivered: sum(supplies.map(({ amount }) => amount)),
      back: sum(others.filter((amount) => amount > 0)),
      out: 0 - sum(others.filter((amount) => amount < 0)),
      atEnd,
      deliveries: supplies.map(({ record }) => record),
    };
  });
  return { weeks, delivered: sum(weeks.map((week) => week.delivered)), now: balance };
}

function isSupply(ledger: Ledger, line: RunningLine): boolean {
  return SUPPLIES.has(ledger.standing.get(line.record)?.kind ?? '');
}
