import type { Ledger } from '../ledger/ledger.ts';
import type { AmountApart } from '../questions/explain/amounts-apart.ts';
import { accountName, productName } from './account-name.ts';
import { moneyText, unitsText } from './money-text.ts';

/** What differs, by account and product: `Stockroom: Honey`. */
export function apartName(apart: AmountApart, ledger: Pick<Ledger, 'setup'>): string {
  const place = accountName(ledger, apart.ledger, apart.account);
  if (apart.product === '') return place;
  return `${place}: ${productName(ledger.setup, apart.product)}`;
}

/** By how much what was seen differs from the book, and which way. */
export function apartWords({ ledger, account, before, after }: AmountApart, currency: string) {
  // The supplier account is negative while something is still to pay: more to pay is "more".
  const by = account === 'supplier' && ledger === 'money' ? before - after : after - before;
  const size = Math.abs(by);
  const amount = ledger === 'money' ? moneyText(size, currency) : unitsText(size);
  // Short and over is negative where there is money over.
  if (account === 'overshort') return `${amount} ${by < 0 ? 'short' : 'over'}`;
  const isHeld = (ledger === 'stock' && account === 'stockroom') || account === 'cashbox';
  if (isHeld) return `${amount} ${by < 0 ? 'short' : 'over'}`;
  return `${amount} ${by < 0 ? 'less' : 'more'} than in the book`;
}
