import type { Place, PlaceId } from '../questions/places.ts';
import type { LedgerName } from '../questions/postings-of.ts';
import { moneyText, unitsText } from './money-text.ts';

/** Names of places, and what is there in words: an amount never stands without its direction. */

const NAMES: Readonly<Record<PlaceId, string>> = {
  stockroom: 'Stockroom',
  families: 'Families',
  stalls: 'Stalls',
  cashbox: 'Cash box',
  cards: 'Cards on the way',
  bank: 'Bank',
  supplier: 'Supplier',
  neighbours: 'Neighbour groups',
  given: 'Given away',
  lost: 'Lost or damaged',
};

export function placeName(place: PlaceId): string {
  return NAMES[place];
}

/** Parts of the two proofs, as what holds goods or money. */
const HELD_NAMES: Readonly<Record<string, string>> = {
  ...NAMES,
  goods: 'Goods in the stockroom',
  families: 'Families still to pay',
  supplier: 'Paid ahead to the supplier',
  buyers: 'Gift units not paid for yet',
  overshort: 'Short at stalls',
  fees: 'Fees',
  losses: 'Losses',
  proceeds: 'Proceeds taken back',
};

/** And as what the group owes or earned. */
const OWED_NAMES: Readonly<Record<string, string>> = {
  ...NAMES,
  goods: 'Goods more out than in',
  families: 'Families in credit',
  supplier: 'To pay to the supplier',
  buyers: 'Buyers’ online payments',
  overshort: 'Over at stalls',
  fees: 'Fees given back',
  losses: 'Gained on prices',
  proceeds: 'Proceeds',
};

const UNITS_NAMES: Readonly<Record<string, string>> = { ...NAMES, stalls: 'Sold at stalls' };

export function proofPartName(part: string, side: 'units' | 'held' | 'owed'): string {
  const names = { units: UNITS_NAMES, held: HELD_NAMES, owed: OWED_NAMES };
  return names[side][part] ?? part;
}

/** One figure of a place: what it is about, the number, and the words after it. */
export interface PlaceFigure {
  readonly about: 'goods' | 'money' | 'difference';
  readonly text: string;
  readonly words: string;
}

/** The figures of a place as people say them: `312 units`, `$1,200.00 to pay`. */
export function placeFigures(place: Place, currency: string): PlaceFigure[] {
  const figures: PlaceFigure[] = [];
  const { units, unitsFrom, minor, against } = place;
  if (units !== undefined) figures.push(goods(units, GOODS_WORDS[place.place] ?? ''));
  if (unitsFrom !== undefined) figures.push(goods(unitsFrom, 'taken'));
  if (minor !== undefined) figures.push(...moneyFigure(place.place, minor, currency));
  if (against !== undefined && against > 0) {
    figures.push({ about: 'money', text: moneyText(against, currency), words: 'in credit' });
  }
  return figures;
}

const GOODS_WORDS: Partial<Record<PlaceId, string>> = {
  stalls: 'sold',
  supplier: 'delivered',
  neighbours: 'given',
};

function goods(units: number, words: string): PlaceFigure {
  const noun = Math.abs(units) === 1 ? 'unit' : 'units';
  const meaning = units < 0 ? 'more out than in' : words;
  return {
    about: 'goods',
    text: unitsText(Math.abs(units)),
    words: `${noun} ${meaning}`.trim(),
  };
}

function moneyFigure(place: PlaceId, minor: number, currency: string): PlaceFigure[] {
  const said = balanceFigure('money', accountFor(place), accountSign(place) * minor, currency);
  // A stall that agrees and a season without losses have nothing to say about money.
  return minor === 0 && (place === 'stalls' || place === 'lost') ? [] : [said];
}

function accountFor(place: PlaceId): string {
  const accounts: Partial<Record<PlaceId, string>> = {
    stockroom: 'goods',
    families: 'owed:',
    stalls: 'overshort',
    lost: 'losses',
  };
  return accounts[place] ?? place;
}

/**
 * A place says what is owed to the supplier as a positive amount, the account as a negative one.
 */
function accountSign(place: PlaceId): 1 | -1 {
  return place === 'supplier' ? -1 : 1;
}

/** What a money account means on its usual side and on the other one. */
const MEANING: Readonly<Record<string, readonly [positive: string, negative: string]>> = {
  goods: ['at price', 'more out than in'],
  owed: ['still to pay', 'in credit'],
  cashbox: ['in hand', 'more out than in'],
  cards: ['on the way', 'more arrived than taken'],
  bank: ['in account', 'overdrawn'],
  supplier: ['paid ahead', 'to pay'],
  buyers: ['of gift units nobody paid for yet', 'paid online, not placed yet'],
  overshort: ['short', 'over'],
  fees: ['spent on fees', 'of fees given back'],
  losses: ['at price', 'gained on prices'],
  proceeds: ['of proceeds taken back', 'of proceeds'],
};

/** A balance of any account as a figure with words for its direction. */
export function balanceFigure(
  ledger: LedgerName,
  account: string,
  amount: number,
  currency: string,
): PlaceFigure {
  if (ledger !== 'money') return goods(unitsShown(account, amount), creditWords(ledger, account));
  const kind = account.split(':')[0] ?? account;
  const [positive, negative] = MEANING[kind] ?? ['', 'the other way'];
  return {
    about: kind === 'overshort' ? 'difference' : 'money',
    text: moneyText(Math.abs(amount), currency),
    words: amount < 0 ? negative : positive,
  };
}

/** Units that left the supplier, or credit that was given out, are told as what they are. */
function unitsShown(account: string, amount: number): number {
  return account === 'supplier' || account === 'issued' ? 0 - amount : amount;
}

function creditWords(ledger: LedgerName, account: string): string {
  if (ledger === 'credit') return account.startsWith('pool:') ? 'not yet shared' : 'of credit';
  return account === 'supplier' ? 'delivered' : '';
}
