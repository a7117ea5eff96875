import { unreachable } from '../base/assert.ts';
import type { Place, PlaceId } from '../questions/places.ts';
import type { LedgerName } from '../questions/postings-of.ts';
import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';

/** Names of places, and what is there in words: an amount never stands without its direction. */

const placeNames = onceEach(
  (say): Readonly<Record<PlaceId, string>> => ({
    stockroom: say`Stockroom`,
    families: say`Families`,
    stalls: say`Stalls`,
    cashbox: say`Cash box`,
    cards: say`Cards on the way`,
    bank: say`Bank`,
    supplier: say`Supplier`,
    neighbours: say`Neighbour groups`,
    given: say`Given away`,
    lost: say`Lost or damaged`,
  }),
);

export function placeName(place: PlaceId, say: Say): string {
  return placeNames(say)[place];
}

type PartNames = Readonly<Record<string, string>>;

/** Parts of the two proofs: where units are, what holds goods or money, what is owed or earned. */
const partNames = onceEach((say): Readonly<Record<'units' | 'held' | 'owed', PartNames>> => {
  const names = placeNames(say);
  return {
    units: { ...names, stalls: say`Sold at stalls` },
    held: {
      ...names,
      goods: say`Goods in the stockroom`,
      families: say`Families still to pay`,
      supplier: say`Paid ahead to the supplier`,
      buyers: say`Gift units not paid for yet`,
      overshort: say`Short at stalls`,
      fees: say`Fees`,
      losses: say`Losses`,
      proceeds: say`Proceeds taken back`,
    },
    owed: {
      ...names,
      goods: say`Goods more out than in`,
      families: say`Families in credit`,
      supplier: say`To pay to the supplier`,
      buyers: say`Buyers’ online payments`,
      overshort: say`Over at stalls`,
      fees: say`Fees given back`,
      losses: say`Gained on prices`,
      proceeds: say`Proceeds`,
    },
  };
});

export function proofPartName(part: string, side: 'units' | 'held' | 'owed', say: Say): string {
  return partNames(say)[side][part] ?? part;
}

/** One figure of a place: what it is about, the number, and the words after it. */
export interface PlaceFigure {
  readonly about: 'goods' | 'money' | 'difference';
  readonly text: string;
  readonly words: string;
}

/** The figures of a place as people say them: `312 units`, `$1,200.00 to pay`. */
export function placeFigures(place: Place, currency: string, say: Say): PlaceFigure[] {
  const figures: PlaceFigure[] = [];
  const { units, unitsFrom, minor, against } = place;
  if (units !== undefined) figures.push(goods(units, GOODS[place.place] ?? 'units', say));
  if (unitsFrom !== undefined) figures.push(goods(unitsFrom, 'taken', say));
  if (minor !== undefined) figures.push(...moneyFigure(place.place, minor, currency, say));
  if (against !== undefined && against > 0) {
    figures.push({ about: 'money', text: say.money(against, currency), words: say`in credit` });
  }
  return figures;
}

type GoodsMeaning =
  | 'units'
  | 'sold'
  | 'delivered'
  | 'given'
  | 'taken'
  | 'more-out'
  | 'not-shared'
  | 'credit';

const GOODS: Partial<Record<PlaceId, GoodsMeaning>> = {
  stalls: 'sold',
  supplier: 'delivered',
  neighbours: 'given',
};

function goods(units: number, meaning: GoodsMeaning, say: Say): PlaceFigure {
  const size = Math.abs(units);
  const words = goodsWords(size, units < 0 ? 'more-out' : meaning, say);
  return { about: 'goods', text: say.units(size), words };
}

function goodsWords(units: number, meaning: GoodsMeaning, say: Say): string {
  switch (meaning) {
    case 'units':
      return say.count(units)`unit|units`;
    case 'sold':
      return say.count(units)`unit sold|units sold`;
    case 'delivered':
      return say.count(units)`unit delivered|units delivered`;
    case 'given':
      return say.count(units)`unit given|units given`;
    case 'taken':
      return say.count(units)`unit taken|units taken`;
    case 'more-out':
      return say.count(units)`unit more out than in|units more out than in`;
    case 'not-shared':
      return say.count(units)`unit not yet shared|units not yet shared`;
    case 'credit':
      return say.count(units)`unit of credit|units of credit`;
    default:
      return unreachable(meaning);
  }
}

function moneyFigure(place: PlaceId, minor: number, currency: string, say: Say): PlaceFigure[] {
  const amount = accountSign(place) * minor;
  const said = balanceFigure('money', accountFor(place), amount, currency, say);
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
const meanings = onceEach(
  (say): Readonly<Record<string, readonly [positive: string, negative: string]>> => ({
    goods: [say`at price`, say`more out than in`],
    owed: [say`still to pay`, say`in credit`],
    cashbox: [say`in hand`, say`more out than in`],
    cards: [say`on the way`, say`more arrived than taken`],
    bank: [say`in account`, say`overdrawn`],
    supplier: [say`paid ahead`, say`to pay`],
    buyers: [say`of gift units nobody paid for yet`, say`paid online, not placed yet`],
    overshort: [say`short`, say`over`],
    fees: [say`spent on fees`, say`of fees given back`],
    losses: [say`at price`, say`gained on prices`],
    proceeds: [say`of proceeds taken back`, say`of proceeds`],
  }),
);

/** A balance of any account as a figure with words for its direction. */
export function balanceFigure(
  ledger: LedgerName,
  account: string,
  amount: number,
  currency: string,
  say: Say,
): PlaceFigure {
  if (ledger !== 'money') {
    return goods(unitsShown(account, amount), unitsMeaning(ledger, account), say);
  }
  const kind = account.split(':')[0] ?? account;
  const [positive, negative] = meanings(say)[kind] ?? ['', say`the other way`];
  return {
    about: kind === 'overshort' ? 'difference' : 'money',
    text: say.money(Math.abs(amount), currency),
    words: amount < 0 ? negative : positive,
  };
}

/** Units that left the supplier, or credit that was given out, are told as what they are. */
function unitsShown(account: string, amount: number): number {
  return account === 'supplier' || account === 'issued' ? 0 - amount : amount;
}

function unitsMeaning(ledger: LedgerName, account: string): GoodsMeaning {
  if (ledger === 'credit') return account.startsWith('pool:') ? 'not-shared' : 'credit';
  return account === 'supplier' ? 'delivered' : 'units';
}
