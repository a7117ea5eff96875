import { addDays, daysBetween } from '../../base/day.ts';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { RecordOf } from '../../records/record.ts';
import { familyBalances } from '../family-balances.ts';
import { notYetBanked } from '../not-yet-banked.ts';
import {
  type BankingRules,
  bankingDayFrom,
  bankingDaysBefore,
  commonBankingDays,
  usBankHolidays,
} from './banking-days.ts';
import { chequesInDeposits } from './cheques-in-deposits.ts';

/** What the account will hold on the morning of an announced debit (minor units). */
export interface DebitMorning {
  /** The season's deadline that announces it. */
  readonly deadline: string;
  readonly name: string;
  readonly date: string;
  /** The banking day on which the bank carries it out. */
  readonly takenOn: string;
  /** What the supplier said that it takes; where it said nothing, all that it is owed. */
  readonly takes: number;
  readonly isAnnounced: boolean;
  /** By the book, of what is recorded before that day. */
  readonly holds: number;
  /** Part of it that may still come back or not have arrived. */
  readonly cheques: number;
  readonly cards: number;
  /** What is safe: holds less cheques and cards. */
  readonly safe: number;
  /** What is missing for the debit out of what is safe; 0 where nothing is. */
  readonly short: number;
  /** Cash and cheques that wait to be brought to the bank. */
  readonly notBanked: number;
  /** The last day on which cash, and on which cheques, brought to the bank still help. */
  readonly lastCashDay: string;
  readonly lastChequeDay: string;
  /** Families with something still to pay, the most first. */
  readonly couldPay: readonly { readonly family: string; readonly owes: number }[];
}

/** A debit that took another amount than was announced. */
export interface UnannouncedDebit {
  readonly record: string;
  readonly date: string;
  readonly taken: number;
  readonly announced: number;
}

/** Mornings of the announced debits that are still to come, in order. */
export function debitMornings(
  ledger: Ledger,
  today: string,
  rules: BankingRules = bankingRules(ledger),
): DebitMorning[] {
  const season = ledger.setup.season;
  const taken = new Set(matchedDebits(ledger).map(({ deadline }) => deadline.deadline));
  return announcedDebits(season)
    .filter(({ deadline, date }) => date >= today && !taken.has(deadline))
    .map((deadline) => debitMorning(ledger, deadline, rules));
}

/** Debits whose amount is not the one that was announced, with the record or beforehand. */
export function debitsNotAsAnnounced(ledger: Ledger): UnannouncedDebit[] {
  const byDeadline = new Map(
    matchedDebits(ledger).map(({ debit, deadline }) => [debit.id, deadline.announced]),
  );
  return ledger.movements().flatMap((debit) => {
    if (debit.kind !== 'debit') return [];
    const announced = debit.announced ?? byDeadline.get(debit.id) ?? debit.cents;
    if (announced === debit.cents) return [];
    return [{ record: debit.id, date: debit.date, taken: debit.cents, announced }];
  });
}

/** The season's banking days and holidays, else common practice. */
export function bankingRules(ledger: Ledger): BankingRules {
  const { holidays, ...days } = ledger.setup.season?.banking ?? {};
  return { ...commonBankingDays, ...days, holidays: new Set(holidays ?? usBankHolidays) };
}

type Deadline = NonNullable<RecordOf<'season'>['deadlines']>[number];

/** Deadlines that are debits: those with an amount, or whose id or name says so. */
function announcedDebits(season: RecordOf<'season'> | undefined): Deadline[] {
  return (season?.deadlines ?? [])
    .filter(
      ({ deadline, name, announced }) =>
        announced !== undefined || /\bdebit\b/i.test(`${deadline.replaceAll('-', ' ')} ${name}`),
    )
    .toSorted((a, b) => byText(a.date, b.date));
}

/** Days between a deadline and the debit that was recorded for it. */
const APART_MOST = 4;

/** Recorded debits with the deadline that announced them: the nearest within some days. */
function matchedDebits(ledger: Ledger) {
  const open = new Set(announcedDebits(ledger.setup.season));
  return ledger.movements().flatMap((debit) => {
    if (debit.kind !== 'debit') return [];
    const near = [...open]
      .map((deadline) => ({ deadline, apart: Math.abs(daysBetween(deadline.date, debit.date)) }))
      .filter(({ apart }) => apart <= APART_MOST)
      .sort((a, b) => a.apart - b.apart)[0];
    if (near === undefined) return [];
    open.delete(near.deadline);
    return [{ debit, deadline: near.deadline }];
  });
}

function debitMorning(ledger: Ledger, announced: Deadline, rules: BankingRules): DebitMorning {
  const { deadline, name, date } = announced;
  const takenOn = bankingDayFrom(date, rules);
  const owed = Math.max(0, 0 - ledger.balances.moneyOf('supplier'));
  const takes = announced.announced ?? owed;
  const holds = ledger.asOf(addDays(takenOn, -1)).moneyOf('bank');
  const cheques = Math.min(Math.max(0, holds), chequesNotSafe(ledger, takenOn, rules));
  const cards = cardsNotSafe(ledger, takenOn, rules);
  const safe = holds - cheques - cards;
  return {
    deadline,
    name,
    date,
    takenOn,
    takes,
    isAnnounced: announced.announced !== undefined,
    holds,
    cheques,
    cards,
    safe,
    short: Math.max(0, takes - safe),
    notBanked: sum(notYetBanked(ledger).map(({ cents }) => cents)),
    lastCashDay: bankingDaysBefore(takenOn, rules.cashDays, rules),
    lastChequeDay: bankingDaysBefore(takenOn, rules.chequeDays, rules),
    couldPay: familyBalances(ledger)
      .families.filter(({ owes }) => owes > 0)
      .toSorted((a, b) => b.owes - a.owes || byText(a.family, b.family))
      .map(({ family, owes }) => ({ family, owes })),
  };
}

function chequesNotSafe(ledger: Ledger, day: string, rules: BankingRules): number {
  const safeUntil = bankingDaysBefore(day, rules.chequeDays, rules);
  return sum(
    chequesInDeposits(ledger)
      .filter(({ date }) => date > safeUntil && date < day)
      .map(({ cheques }) => cheques),
  );
}

function cardsNotSafe(ledger: Ledger, day: string, rules: BankingRules): number {
  const safeUntil = bankingDaysBefore(day, rules.cardDays, rules);
  return sum(
    ledger.movements().map((movement) => {
      if (movement.kind !== 'card-settle' || movement.to !== 'bank') return 0;
      // The bank has shown it: it is there.
      if (movement.cleared !== undefined) return 0;
      return movement.date > safeUntil && movement.date < day ? movement.cents : 0;
    }),
  );
}
