import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord } from '../../records/record.ts';
import { debitsNotAsAnnounced, type UnannouncedDebit } from '../debits/debit-mornings.ts';
import { postingsOf } from '../postings-of.ts';
import { proceedsDue } from '../proceeds-due.ts';
import { runningBalance } from '../running-balance.ts';
import {
  type ClosingCause,
  type ClosingContext,
  type ClosingItem,
  idsBehind,
  type NextStep,
} from './closing-item.ts';

/** No cash or cheque is waiting to be banked; where some is, since when. */
export function cashBanked(context: ClosingContext): readonly ClosingItem[] {
  return [takingsMovedOn(context, 'cashbox', 'bank_the_cash')];
}

/** Card takings have all arrived. */
export function cardsArrived(context: ClosingContext): readonly ClosingItem[] {
  return [takingsMovedOn(context, 'cards', 'record_the_card_payout')];
}

/** Takings that wait in an account: what is held now, since when, and how it moves on. */
function takingsMovedOn(
  context: ClosingContext,
  account: 'cashbox' | 'cards',
  moveOn: NextStep,
): ClosingItem {
  const isHeld = context.ledger.balances.moneyOf(account) > 0;
  const records = context.recordsOf('money', account);
  const waiting = isHeld ? sinceEmpty(context.ledger, records, account) : records;
  const since = waiting[0]?.date ?? context.today;
  return moneyItem(context, account, {
    records: waiting.map((record) => record.id),
    cause: isHeld ? { kind: 'held_since', date: since } : { kind: 'banked_too_much' },
    next: isHeld ? moveOn : 'find_the_missing_receipt',
  });
}

/** What buyers paid online without a seller has all become goods or gift units. */
export function buyersCleared(context: ClosingContext): readonly ClosingItem[] {
  const waiting = context.ledger.balances.moneyOf('buyers') < 0;
  return [
    moneyItem(context, 'buyers', {
      records: idsBehind(context, 'money', 'buyers'),
      cause: { kind: waiting ? 'gifts_not_recorded' : 'gifts_without_order' },
      next: waiting ? 'record_the_gift_units' : 'find_the_online_order',
    }),
  ];
}

/** The supplier has had its due and the group its proceeds. */
export function supplierPaid(context: ClosingContext): readonly ClosingItem[] {
  const owes = context.ledger.balances.moneyOf('supplier') < 0;
  const proceeds = proceedsDue(context.ledger);
  const toCome = Math.max(0, (proceeds?.due ?? 0) - (proceeds?.settled ?? 0));
  return [
    moneyItem(context, 'supplier', {
      records: idsBehind(context, 'money', 'supplier'),
      cause: owes
        ? { kind: 'owed_to_supplier', proceedsToCome: toCome }
        : { kind: 'supplier_took_too_much' },
      next: owes ? 'await_the_debit_or_proceeds' : 'ask_the_supplier_to_repay',
    }),
  ];
}

/** Each debit took what was announced, and the account held enough on its day. */
export function debitsCovered(context: ClosingContext): readonly ClosingItem[] {
  const { ledger } = context;
  const debits = context.movements.filter((record) => record.kind === 'debit');
  const base = { group: 'money' } as const;
  if (debits.length === 0) {
    return [
      { ...base, item: 'debits', state: 'not-needed', left: {}, records: [], next: 'nothing' },
    ];
  }
  const otherwise = new Map(debitsNotAsAnnounced(ledger).map((each) => [each.record, each]));
  // One walk through the book for all debits: a fold for each took most of the closing list's time.
  const bank = runningBalance(ledger, { ledger: 'money', accounts: (to) => to === 'bank' }).lines;
  return debits.map((debit) => {
    const item = `debit:${debit.id}`;
    const taken = otherwise.get(debit.id);
    // Asking about it has the shorter time: banks soon give no debit back.
    if (taken !== undefined) return { ...base, item, ...notAsAnnounced(taken) };
    const after = bank.findLast(({ date }) => date <= debit.date)?.balance ?? 0;
    if (after < 0) {
      const holds = after + debit.cents;
      return {
        ...base,
        item,
        state: 'open',
        left: { bank: after },
        records: [debit.id],
        cause: { kind: 'account_too_low', date: debit.date, takes: debit.cents, holds },
        next: 'bank_before_the_debit',
      };
    }
    return { ...base, item, state: 'done', left: {}, records: [debit.id], next: 'nothing' };
  });
}

function notAsAnnounced(debit: UnannouncedDebit): Omit<ClosingItem, 'item' | 'group'> {
  const { record, date, taken, announced } = debit;
  return {
    state: 'open',
    left: { supplier: taken - announced },
    records: [record],
    cause: { kind: 'debit_not_as_announced', date, taken, announced },
    next: 'ask_the_supplier_about_the_debit',
  };
}

function moneyItem(
  context: ClosingContext,
  account: string,
  open: {
    readonly records: readonly string[];
    readonly cause: ClosingCause;
    readonly next: NextStep;
  },
): ClosingItem {
  const base = { item: account, group: 'money' } as const;
  const minor = context.ledger.balances.moneyOf(account);
  if (minor !== 0) return { ...base, state: 'open', left: { [account]: minor }, ...open };
  const state = context.recordsOf('money', account).length === 0 ? 'not-needed' : 'done';
  return { ...base, state, left: {}, records: [], next: 'nothing' };
}

/** The records since the account last stood at zero or below: those behind what is held now. */
function sinceEmpty(
  ledger: Ledger,
  records: readonly MovementRecord[],
  account: string,
): readonly MovementRecord[] {
  let held = 0;
  let start = 0;
  for (const [index, record] of records.entries()) {
    held += changeOf(ledger, record, account);
    if (held <= 0) start = index + 1;
  }
  return records.slice(start);
}

function changeOf(ledger: Ledger, record: MovementRecord, account: string): number {
  let change = 0;
  for (const { ledger: name, amount, from, to } of postingsOf(ledger, record)) {
    if (name !== 'money') continue;
    if (to === account) change += amount;
    if (from === account) change -= amount;
  }
  return change;
}
