import type { Setup } from '../../../ledger/setup.ts';
import { accountName, sellerName, stallName } from '../../../statements/account-name.ts';
import { say } from '../../say.ts';

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
  if (place === 'stockroom') return { title: say`Stockroom`, hint: GOODS_HINT };
  const id = place.slice(place.indexOf(':') + 1);
  if (place.startsWith('stall:')) {
    const title = say`${stallName(setup, id, say)}: short or over`;
    return {
      title,
      hint: say`Its money should be what it sold for. Its own settling is looked through.`,
    };
  }
  if (!place.startsWith('seller:')) {
    return { title: accountName({ setup }, 'stock', place, say), hint: GOODS_HINT };
  }
  return {
    title: say`${sellerName(setup, id)}: what the family says`,
    hint: say`Units taken, less what was brought back or passed on. Leave empty what agrees.`,
    money: say`Paid in all`,
  };
}

const GOODS_HINT = say`Units of each product that are there. Leave empty what agrees with the
  book.`;

const MONEY: Readonly<Record<string, PlaceWords>> = {
  cashbox: {
    title: say`Cash box`,
    hint: say`What is in it, counted twice. Keep the box out of sight while you count.`,
    money: say`Counted in the cash box`,
  },
  bank: {
    title: say`Bank`,
    hint: say`The balance on the bank’s statement at the end of that day.`,
    money: say`Balance of the bank`,
    sides: [say`in account`, say`overdrawn`],
  },
  cards: {
    title: say`Cards on the way`,
    hint: say`Card takings that the card service has not paid out yet.`,
    money: say`Still to come`,
  },
  supplier: {
    title: say`Supplier account`,
    hint: say`The balance on the supplier’s statement at the end of that day.`,
    money: say`Balance of the supplier`,
    sides: [say`paid ahead`, say`still to pay`],
  },
};
