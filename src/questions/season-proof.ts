import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Balances } from '../ledger/balances.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { takingsAtStall } from '../ledger/posting.ts';
import type { Setup } from '../ledger/setup.ts';
import type { Lines } from '../records/fields.ts';
import type { MovementRecord } from '../records/record.ts';

/**
 * The proof of the season: everything that came in is somewhere, product by product. What came in
 * is added up from the records, where it is now is read from the ledger's places, so that the two
 * being equal says something.
 */
export interface SeasonProof {
  /** The day up to which records count; undefined: all of them. */
  readonly asOf?: string;
  /** In the order of product ids; every product of the set-up and every other that moved. */
  readonly products: readonly ProofRow[];
  /**
   * Units of all products together. Its difference nets products against each other, so that only
   * `agrees` says whether the proof holds.
   */
  readonly total: ProofRow;
  readonly money: MoneyProof;
  /** True where every product's two sides are equal, and both sides of the money. */
  readonly agrees: boolean;
}

/** Whole units of one product. */
export interface ProofRow {
  readonly product: string;
  readonly cameIn: CameIn;
  readonly toAccountFor: number;
  readonly places: Places;
  readonly accountedFor: number;
  /** accountedFor − toAccountFor: 0 agrees, less is short, more is over. */
  readonly difference: number;
}

export interface CameIn {
  readonly delivered: number;
  readonly swappedIn: number;
  readonly swappedOut: number;
  /** Brought back to the supplier: swapped out to a neighbour that is its depot. */
  readonly broughtBack: number;
}

export interface Places {
  readonly families: number;
  readonly stalls: number;
  readonly given: number;
  /** Lost or damaged, less what was found again. */
  readonly lost: number;
  readonly shelf: number;
}

/** Minor units. What came in from sales, and what of it the group keeps. */
export interface MoneyProof {
  /** Payments of families less cheques that came back and refunds. */
  readonly families: number;
  /** What stalls took: cash less the float, cheques, cards, and cash paid out of the box. */
  readonly stalls: number;
  /** What buyers paid the supplier online. */
  readonly online: number;
  /** families + stalls + online. */
  readonly gross: number;
  readonly proceeds: number;
  readonly fees: number;
  /** Goods and debts written off. */
  readonly losses: number;
  /** What stalls were short (negative: over). */
  readonly short: number;
  /** proceeds − fees − losses − short. */
  readonly net: number;
  readonly bank: number;
  /**
   * Money of the group that is not in the bank account yet, less what the supplier is still owed.
   */
  readonly elsewhere: number;
  /** bank + elsewhere − net: 0 where both sides agree. */
  readonly difference: number;
}

export type ProofRefusal = { readonly name: 'sums_too_large' };

export function seasonProof(ledger: Ledger, asOf?: string): Outcome<SeasonProof, ProofRefusal> {
  if (!ledger.balances.exact) return refused({ name: 'sums_too_large' });
  const balances = asOf === undefined ? ledger.balances : ledger.asOf(asOf);
  const movements = ledger
    .movements()
    .filter((movement) => asOf === undefined || movement.date <= asOf);
  const cameIn = cameInByProduct(movements, ledger.setup);
  const places = placesByProduct(balances);
  const ids = new Set([...ledger.setup.products.keys(), ...cameIn.keys(), ...places.keys()]);
  const products = [...ids]
    .sort()
    .map((product) =>
      proofRow(product, cameIn.get(product) ?? CAME_IN_NONE, places.get(product) ?? PLACES_NONE),
    );
  const money = moneyProof(movements, balances, ledger);
  return done({
    ...(asOf === undefined ? {} : { asOf }),
    products,
    total: totalRow(products),
    money,
    agrees: money.difference === 0 && products.every((row) => row.difference === 0),
  });
}

const CAME_IN_NONE: CameIn = { delivered: 0, swappedIn: 0, swappedOut: 0, broughtBack: 0 };
const PLACES_NONE: Places = { families: 0, stalls: 0, given: 0, lost: 0, shelf: 0 };

/** Both sides of one product, and what they differ by. */
export function proofRow(product: string, cameIn: CameIn, places: Places): ProofRow {
  const { delivered, swappedIn, swappedOut, broughtBack } = cameIn;
  const toAccountFor = delivered + swappedIn - swappedOut - broughtBack;
  const { families, stalls, given, lost, shelf } = places;
  const accountedFor = families + stalls + given + lost + shelf;
  const difference = accountedFor - toAccountFor;
  return { product, cameIn, toAccountFor, places, accountedFor, difference };
}

function totalRow(rows: readonly ProofRow[]): ProofRow {
  const cameIn = { ...CAME_IN_NONE };
  const places = { ...PLACES_NONE };
  for (const row of rows) {
    cameIn.delivered += row.cameIn.delivered;
    cameIn.swappedIn += row.cameIn.swappedIn;
    cameIn.swappedOut += row.cameIn.swappedOut;
    cameIn.broughtBack += row.cameIn.broughtBack;
    places.families += row.places.families;
    places.stalls += row.places.stalls;
    places.given += row.places.given;
    places.lost += row.places.lost;
    places.shelf += row.places.shelf;
  }
  return proofRow('', cameIn, places);
}

function cameInByProduct(
  movements: readonly MovementRecord[],
  { neighbours }: Setup,
): Map<string, CameIn> {
  const byProduct = new Map<string, CameIn>();
  for (const movement of movements) {
    switch (movement.kind) {
      case 'delivery':
        addLines(byProduct, movement.lines, 'delivered');
        break;
      case 'swap-in':
        addLines(byProduct, movement.lines, 'swappedIn');
        break;
      case 'swap-out': {
        const isBack = neighbours.get(movement.neighbour)?.supplier === true;
        addLines(byProduct, movement.lines, isBack ? 'broughtBack' : 'swappedOut');
      }
    }
  }
  return byProduct;
}

function addLines(byProduct: Map<string, CameIn>, lines: Lines, way: keyof CameIn): void {
  for (const product in lines) {
    const before = byProduct.get(product) ?? CAME_IN_NONE;
    byProduct.set(product, { ...before, [way]: before[way] + (lines[product] ?? 0) });
  }
}

function placesByProduct(balances: Balances): Map<string, Places> {
  const byProduct = new Map<string, Places>();
  for (const [account, lines] of balances.table('stock')) {
    const place = placeOf(account);
    if (place === undefined) continue;
    for (const [product, units] of lines) {
      const before = byProduct.get(product) ?? PLACES_NONE;
      byProduct.set(product, { ...before, [place]: before[place] + units });
    }
  }
  return byProduct;
}

/** The place of a stock account; none for the supplier and neighbours, whom goods came from. */
function placeOf(account: string): keyof Places | undefined {
  if (account.startsWith('seller:')) return 'families';
  if (account === 'stall-sold') return 'stalls';
  if (account === 'gifted') return 'given';
  if (account === 'lost') return 'lost';
  if (account === 'stockroom') return 'shelf';
  return undefined;
}

function moneyProof(
  movements: readonly MovementRecord[],
  balances: Balances,
  ledger: Ledger,
): MoneyProof {
  const families = movements.reduce((sum, movement) => sum + familyMoney(movement, ledger), 0);
  const stalls = sumOf(movements, (movement) =>
    movement.kind === 'stall-close' ? takingsAtStall(movement) : 0,
  );
  const online = sumOf(movements, (movement) => (movement.kind === 'online' ? movement.paid : 0));
  const proceeds = 0 - balances.moneyOf('proceeds');
  const fees = balances.moneyOf('fees');
  const losses = balances.moneyOf('losses');
  const short = balances.moneyOf('overshort');
  const bank = balances.moneyOf('bank');
  const net = proceeds - fees - losses - short;
  const elsewhere = moneyElsewhere(balances);
  return {
    families,
    stalls,
    online,
    gross: families + stalls + online,
    proceeds,
    fees,
    losses,
    short,
    net,
    bank,
    elsewhere,
    difference: bank + elsewhere - net,
  };
}

function sumOf(
  movements: readonly MovementRecord[],
  minorOf: (movement: MovementRecord) => number,
): number {
  return movements.reduce((sum, movement) => sum + minorOf(movement), 0);
}

/** What a movement adds to the money that families paid the group. */
function familyMoney(movement: MovementRecord, ledger: Ledger): number {
  if (movement.kind === 'payment') return movement.cents;
  if (movement.kind === 'refund') return -movement.cents;
  if (movement.kind !== 'bounced') return 0;
  const payment = ledger.standing.currentOf(movement.payment);
  return payment?.kind === 'payment' ? -payment.cents : 0;
}

/** Goods at price, what families have to pay, cash and cards on the way, less debts to others. */
function moneyElsewhere(balances: Balances): number {
  let minor = 0;
  for (const account of balances.table('money').keys()) {
    const counts =
      account.startsWith('owed:') ||
      account === 'goods' ||
      account === 'cashbox' ||
      account === 'cards' ||
      account === 'buyers' ||
      account === 'supplier';
    if (counts) minor += balances.moneyOf(account);
  }
  return minor;
}
