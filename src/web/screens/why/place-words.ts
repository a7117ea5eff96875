import type { Setup } from '../../../ledger/setup.ts';
import { accountName, sellerName } from '../../../statements/account-name.ts';

/** What is asked of a place where something may have been seen. */
export interface PlaceWords {
  readonly title: string;
  readonly hint: string;
  /** The label of the money, where there is any. */
  readonly money?: string;
  /** The two directions of the money: on the account's positive and on its negative side. */
  readonly sides?: readonly [string, string];
}

export function placeWords(setup: Setup, place: string): PlaceWords {
  const known = MONEY[place];
  if (known !== undefined) return known;
  if (place === 'stockroom') return { title: 'Stockroom', hint: GOODS_HINT };
  const id = place.slice(place.indexOf(':') + 1);
  if (!place.startsWith('seller:')) {
    return { title: accountName({ setup }, 'stock', place), hint: GOODS_HINT };
  }
  return {
    title: `${sellerName(setup, id)}: what the family says`,
    hint: 'Units taken, less what was brought back or passed on. Leave empty what agrees.',
    money: 'Paid in all',
  };
}

const GOODS_HINT = 'Units of each product that are there. Leave empty what agrees with the book.';

const MONEY: Readonly<Record<string, PlaceWords>> = {
  cashbox: {
    title: 'Cash box',
    hint: 'What is in it, counted twice. Keep the box out of sight while you count.',
    money: 'Counted in the cash box',
  },
  bank: {
    title: 'Bank',
    hint: 'The balance on the bank’s statement at the end of that day.',
    money: 'Balance of the bank',
    sides: ['in account', 'overdrawn'],
  },
  cards: {
    title: 'Cards on the way',
    hint: 'Card takings that the card service has not paid out yet.',
    money: 'Still to come',
  },
  supplier: {
    title: 'Supplier account',
    hint: 'The balance on the supplier’s statement at the end of that day.',
    money: 'Balance of the supplier',
    sides: ['paid ahead', 'still to pay'],
  },
};
