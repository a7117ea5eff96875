import { sum } from '../base/sum.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { byWeek, type CalendarWeek, weeksHolding } from './calendar-weeks.ts';
import { debitMornings } from './debits/debit-mornings.ts';
import { type RunningLine, runningBalance } from './running-balance.ts';

/** The bank account in one week, in minor units. */
export interface MoneyWeek extends CalendarWeek {
  /** Came in: deposits, card payouts, debits that were returned. */
  readonly paidIn: number;
  /** The supplier's debits. */
  readonly debited: number;
  /** Went out otherwise: fees, cheques that came back. */
  readonly otherOut: number;
  /** Debits and the rest together. */
  readonly paidOut: number;
  /** By the book when the week ends; below 0 where it is overdrawn. */
  readonly atEnd: number;
  /** What debits still to come will take in this week. */
  readonly announced: number;
}

export interface MoneyInAndOut {
  readonly weeks: readonly MoneyWeek[];
  readonly paidIn: number;
  readonly debited: number;
  readonly otherOut: number;
  readonly announced: number;
  /** On the account now, by the book: the ledger's own. */
  readonly now: number;
}

/**
 * Money in and out of the bank account by week, against the debits taken and still to come.
 *
 * @param today `YYYY-MM-DD`
 */
export function moneyInAndOut(ledger: Ledger, today: string): MoneyInAndOut {
  const bank = (account: string) => account === 'bank';
  const { lines, balance } = runningBalance(ledger, { ledger: 'money', accounts: bank });
  const mornings = debitMornings(ledger, today);
  const days = [...lines.map(({ date }) => date), ...mornings.map(({ takenOn }) => takenOn)];
  const inWeek = byWeek(lines, ({ date }) => date);
  const toComeIn = byWeek(mornings, ({ takenOn }) => takenOn);
  let atEnd = 0;
  const weeks = weeksHolding(days).map((week) => {
    const within = inWeek.get(week.from) ?? [];
    const debits = within.filter((line) => isDebit(ledger, line)).map(({ amount }) => amount);
    const others = within.filter((line) => !isDebit(ledger, line)).map(({ amount }) => amount);
    const toCome = toComeIn.get(week.from) ?? [];
    const debited = 0 - sum(debits);
    const otherOut = 0 - sum(others.filter((amount) => amount < 0));
    atEnd += sum(debits) + sum(others);
    return {
      ...week,
      paidIn: sum(others.filter((amount) => amount > 0)),
      debited,
      otherOut,
      paidOut: debited + otherOut,
      atEnd,
      announced: sum(toCome.map(({ takes }) => takes)),
    };
  });
  return {
    weeks,
    paidIn: sum(weeks.map((week) => week.paidIn)),
    debited: sum(weeks.map((week) => week.debited)),
    otherOut: sum(weeks.map((week) => week.otherOut)),
    announced: sum(weeks.map((week) => week.announced)),
    now: balance,
  };
}

function isDebit(ledger: Ledger, line: RunningLine): boolean {
  return ledger.standing.get(line.record)?.kind === 'debit';
}
