import type { RecordOf } from '../../records/record.ts';
import { creditParts } from '../credit-parts.ts';
import {
  type ClosingCause,
  type ClosingContext,
  type ClosingItem,
  idsBehind,
  type NextStep,
} from './closing-item.ts';

/** Every seller's account is at zero; one in credit is told apart by its reason. */
export function familyAccounts(context: ClosingContext): readonly ClosingItem[] {
  return accountsOwed(context).map((account) => {
    const seller = account.slice('owed:'.length);
    const owed = context.ledger.balances.moneyOf(account);
    const base = { item: account, group: 'families' } as const;
    const records = idsBehind(context, 'money', account);
    if (owed === 0) {
      const state = records.length === 0 ? 'not-needed' : 'done';
      return { ...base, state, left: {}, records: [], next: 'nothing' };
    }
    const cause = owed > 0 ? owedCause(context, seller, owed) : creditCause(context, seller, owed);
    return {
      ...base,
      state: 'open',
      left: { [account]: owed },
      records,
      ...(cause === undefined ? {} : { cause }),
      next: nextStep(owed, cause),
    };
  });
}

/** Accounts of all sellers of the set-up, and of any that only movements name. */
function accountsOwed(context: ClosingContext): string[] {
  const { balances, setup } = context.ledger;
  const named = [...setup.sellers.keys()].map((seller) => `owed:${seller}`);
  const moved = [...balances.table('money').keys()].filter((name) => name.startsWith('owed:'));
  return [...new Set([...named, ...moved])].sort();
}

function owedCause(
  context: ClosingContext,
  seller: string,
  owed: number,
): ClosingCause | undefined {
  const bounced = context
    .recordsOf('money', `owed:${seller}`)
    .filter((record) => record.kind === 'bounced')
    .at(-1);
  if (bounced !== undefined) {
    const payment = context.ledger.standing.currentOf(bounced.payment);
    const cents = payment?.kind === 'payment' ? payment.cents : 0;
    if (cents > 0 && owed >= cents) {
      return { kind: 'cheque_came_back', date: bounced.date, cents };
    }
  }
  return siblingCause(context, seller, owed);
}

function creditCause(context: ClosingContext, seller: string, owed: number): ClosingCause {
  const movements = context.recordsOf('money', `owed:${seller}`);
  const parts = creditParts(context.ledger, seller, -owed, movements);
  if (parts.paidTooMuch === -owed) {
    const sibling = siblingCause(context, seller, owed);
    if (sibling !== undefined) return sibling;
  }
  return { kind: 'family_in_credit', ...parts };
}

/** A brother or sister whose account is out by the same amount the other way. */
function siblingCause(
  context: ClosingContext,
  seller: string,
  owed: number,
): ClosingCause | undefined {
  const { balances, setup } = context.ledger;
  const family = setup.sellers.get(seller)?.family;
  const sibling = [...setup.sellers.values()].find(
    (other: RecordOf<'seller'>) =>
      other.family === family &&
      other.seller !== seller &&
      balances.moneyOf(`owed:${other.seller}`) === -owed,
  );
  if (family === undefined || sibling === undefined) return undefined;
  return { kind: 'sibling_the_other_way', seller: sibling.seller, cents: Math.abs(owed) };
}

function nextStep(owed: number, cause: ClosingCause | undefined): NextStep {
  if (cause?.kind === 'sibling_the_other_way') return 'move_the_payment_to_the_sibling';
  if (owed > 0) return 'ask_the_family_to_pay';
  if (cause?.kind !== 'family_in_credit') return 'pay_the_family_back';
  if (cause.gifts > 0) return 'record_the_gift_units';
  return cause.waiting > 0 ? 'hand_over_the_paid_order' : 'pay_the_family_back';
}
