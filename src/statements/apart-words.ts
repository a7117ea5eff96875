import type { Ledger } from '../ledger/ledger.ts';
import type { AmountApart } from '../questions/explain/amounts-apart.ts';
import type { Say } from '../words/say.ts';
import { accountName, productName } from './account-name.ts';

/** What differs, by account and product: `Stockroom: Honey`. */
export function apartName(apart: AmountApart, ledger: Pick<Ledger, 'setup'>, say: Say): string {
  const place = accountName(ledger, apart.ledger, apart.account, say);
  if (apart.product === '') return place;
  return say`${place}: ${productName(ledger.setup, apart.product)}`;
}

/** By how much what was seen differs from the book, and which way. */
export function apartWords(
  { ledger, account, before, after }: AmountApart,
  currency: string,
  say: Say,
) {
  // The supplier account is negative while something is still to pay: more to pay is "more".
  const by = account === 'supplier' && ledger === 'money' ? before - after : after - before;
  const size = Math.abs(by);
  const amount = ledger === 'money' ? say.money(size, currency) : say.units(size);
  // Short and over is negative where there is money over.
  const isHeld = (ledger === 'stock' && account === 'stockroom') || account === 'cashbox';
  if (account === 'overshort' || isHeld) {
    return by < 0 ? say`${amount} short` : say`${amount} over`;
  }
  return by < 0 ? say`${amount} less than in the book` : say`${amount} more than in the book`;
}
