import { assert } from '../base/assert.ts';
import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';

/** What one seller of the family owes, and the part of the payment that goes to them. */
export interface PaymentShare {
  readonly seller: string;
  /** Minor units owed before the payment; negative where the seller is in credit. */
  readonly owes: number;
  /** Minor units of this payment. */
  readonly cents: number;
}

export interface PaymentSpread {
  /** One share a seller, in the written order of seller ids; shares of zero included. */
  readonly shares: readonly PaymentShare[];
  /** Minor units that the sellers with something to pay owe together. */
  readonly owed: number;
  /** Minor units paid on top of everything owed, part of the share of `beyondTo`. */
  readonly beyond: number;
  readonly beyondTo: string | undefined;
}

/**
 * Spreads one payment of a family over its sellers. Rule: in proportion to what each still owes, by
 * largest remainder (quotas rounded down, then one minor unit each to the largest remainders; equal
 * remainders in the written order of seller ids). As the payment is then never more than all owe
 * together, no share is above what its seller owes. What is paid beyond that goes whole to the
 * seller who owes most, equal ones in the written order of ids.
 *
 * @param cents minor units paid, 0 or more
 * @param owedBySeller minor units by seller id; negative is in credit and takes no share
 */
export function spreadPayment(
  cents: number,
  owedBySeller: Readonly<Record<string, number>>,
): PaymentSpread {
  assert(Number.isSafeInteger(cents) && cents >= 0, 'a payment of whole minor units');
  const sellers = Object.entries(owedBySeller)
    .map(([seller, owes]) => ({ seller, owes }))
    .sort((a, b) => byText(a.seller, b.seller));
  const owed = sellers.reduce((sum, { owes }) => sum + Math.max(owes, 0), 0);
  const within = Math.min(cents, owed);
  const parts = byLargestRemainder(
    within,
    sellers.map(({ owes }) => Math.max(owes, 0)),
  );
  const beyond = cents - within;
  const most = Math.max(...sellers.map(({ owes }) => owes));
  const first = sellers.find(({ owes }) => owes === most);
  const shares = sellers.map(({ seller, owes }, at) => ({
    seller,
    owes,
    cents: (parts[at] ?? 0) + (seller === first?.seller ? beyond : 0),
  }));
  return { shares, owed, beyond, beyondTo: beyond > 0 ? first?.seller : undefined };
}

/** Spreads a payment over the sellers of one family by what the book says they owe. */
export function spreadFamilyPayment(ledger: Ledger, family: string, cents: number): PaymentSpread {
  const owedBySeller: Record<string, number> = {};
  for (const seller of ledger.setup.sellers.values()) {
    if (seller.family !== family) continue;
    owedBySeller[seller.seller] = ledger.balances.moneyOf(`owed:${seller.seller}`);
  }
  return spreadPayment(cents, owedBySeller);
}

/** Products of two safe integers leave the safe integers, so quotas are taken in big integers. */
function byLargestRemainder(total: number, weights: readonly number[]): number[] {
  const sum = BigInt(weights.reduce((all, weight) => all + weight, 0));
  if (sum === 0n) return weights.map(() => 0);
  const quotas = weights.map((weight) => BigInt(total) * BigInt(weight));
  const parts = quotas.map((quota) => Number(quota / sum));
  const left = total - parts.reduce((all, part) => all + part, 0);
  const byRemainder = quotas
    .map((quota, at) => ({ at, remainder: quota % sum }))
    // The sort is stable: equal remainders keep the order they came in.
    .sort((a, b) => (a.remainder > b.remainder ? -1 : a.remainder < b.remainder ? 1 : 0));
  for (const { at } of byRemainder.slice(0, left)) parts[at] = (parts[at] ?? 0) + 1;
  return parts;
}
