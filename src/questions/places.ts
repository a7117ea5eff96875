import type { Ledger } from '../ledger/ledger.ts';

/**
 * Where everything is: goods and money are always somewhere. Each place with its units and money
 * now, and the two proofs that the places add up to what came in.
 */
export interface Places {
  readonly units: UnitsProof;
  readonly money: MoneyProof;
  readonly places: readonly Place[];
}

export const placeIds = [
  'stockroom',
  'families',
  'stalls',
  'cashbox',
  'cards',
  'bank',
  'supplier',
  'neighbours',
  'given',
  'lost',
] as const;
export type PlaceId = (typeof placeIds)[number];

export interface Place {
  readonly place: PlaceId;
  /** Whole units there now, products together; undefined where goods never are. */
  readonly units?: number;
  /** Minor units; what it means is said by the place: at price, still to pay, in hand, owed. */
  readonly minor?: number;
  /** Minor units the other way: families in credit. */
  readonly against?: number;
  /** Units that came from there: swapped in from neighbour groups. */
  readonly unitsFrom?: number;
  /** A product, family or stall the wrong way round there: more out than in. */
  readonly negative: boolean;
}

/** Units that came in, and where they are; `in` and `accounted` are equal in every book. */
export interface UnitsProof {
  readonly delivered: number;
  readonly swappedIn: number;
  readonly in: number;
  readonly accounted: number;
  readonly parts: readonly ProofPart[];
}

/**
 * Money in minor units: what the group owes or earned, and where that is now. Every balance stands
 * on one of the two sides with a positive amount, and both sides add up to the same.
 */
export interface MoneyProof {
  readonly owed: number;
  readonly owedParts: readonly ProofPart[];
  readonly accounted: number;
  readonly parts: readonly ProofPart[];
}

export interface ProofPart {
  readonly part: string;
  readonly amount: number;
}

export function places(ledger: Ledger): Places {
  const units = unitsProof(ledger);
  const part = (name: string) => units.parts.find(({ part }) => part === name)?.amount ?? 0;
  const { balances } = ledger;
  const owed = owedByFamilies(ledger);
  const pools = [...balances.table('credit').keys()].filter((name) => name.startsWith('pool:'));
  return {
    units,
    money: moneyProof(ledger, owed),
    places: [
      {
        place: 'stockroom',
        units: part('stockroom'),
        minor: balances.moneyOf('goods'),
        negative: anyNegative(ledger, 'stock', (account) => account === 'stockroom'),
      },
      {
        place: 'families',
        units: part('families'),
        minor: owed.toPay,
        against: owed.inCredit,
        negative: anyNegative(ledger, 'stock', (account) => account.startsWith('seller:')),
      },
      {
        place: 'stalls',
        units: part('stalls'),
        minor: balances.moneyOf('overshort'),
        negative: anyNegative(ledger, 'credit', (account) => pools.includes(account)),
      },
      { place: 'cashbox', minor: balances.moneyOf('cashbox'), negative: below(ledger, 'cashbox') },
      { place: 'cards', minor: balances.moneyOf('cards'), negative: below(ledger, 'cards') },
      { place: 'bank', minor: balances.moneyOf('bank'), negative: below(ledger, 'bank') },
      {
        place: 'supplier',
        units: units.delivered,
        minor: -balances.moneyOf('supplier'),
        negative: false,
      },
      {
        place: 'neighbours',
        units: part('neighbours'),
        unitsFrom: units.swappedIn,
        negative: false,
      },
      { place: 'given', units: part('given'), negative: false },
      { place: 'lost', units: part('lost'), minor: balances.moneyOf('losses'), negative: false },
    ],
  };
}

/** Delivered + swapped in = stockroom + families + sold at stalls + given + lost + swapped out. */
function unitsProof(ledger: Ledger): UnitsProof {
  const { balances } = ledger;
  const swapped = { in: 0, out: 0 };
  for (const movement of ledger.movements()) {
    if (movement.kind === 'swap-in') swapped.in += total(movement.lines);
    if (movement.kind === 'swap-out') swapped.out += total(movement.lines);
  }
  let families = 0;
  for (const account of balances.table('stock').keys()) {
    if (account.startsWith('seller:')) families += balances.unitsOf('stock', account);
  }
  const parts = [
    { part: 'stockroom', amount: balances.unitsOf('stock', 'stockroom') },
    { part: 'families', amount: families },
    { part: 'stalls', amount: balances.unitsOf('stock', 'stall-sold') },
    { part: 'given', amount: balances.unitsOf('stock', 'gifted') },
    { part: 'lost', amount: balances.unitsOf('stock', 'lost') },
    { part: 'neighbours', amount: swapped.out },
  ];
  const delivered = 0 - balances.unitsOf('stock', 'supplier');
  return {
    delivered,
    swappedIn: swapped.in,
    in: delivered + swapped.in,
    accounted: parts.reduce((sum, { amount }) => sum + amount, 0),
    parts,
  };
}

/** Owed and earned (supplier, proceeds, credit) = goods + families + in hand + costs. */
function moneyProof(ledger: Ledger, families: Owed): MoneyProof {
  const accounts = ['goods', 'cashbox', 'cards', 'bank', 'buyers'];
  const costs = ['overshort', 'fees', 'losses', 'supplier', 'proceeds'];
  const parts = [...accounts, ...costs].map((part) => ({
    part,
    amount: ledger.balances.moneyOf(part),
  }));
  parts.splice(1, 0, { part: 'families', amount: families.toPay });
  parts.push({ part: 'families', amount: 0 - families.inCredit });
  const held = parts.filter(({ amount }) => amount > 0);
  const owed = parts.filter(({ amount }) => amount < 0);
  const positive = owed.map(({ part, amount }) => ({ part, amount: 0 - amount }));
  return {
    owed: positive.reduce((sum, { amount }) => sum + amount, 0),
    owedParts: positive,
    accounted: held.reduce((sum, { amount }) => sum + amount, 0),
    parts: held,
  };
}

interface Owed {
  readonly toPay: number;
  readonly inCredit: number;
}

function owedByFamilies(ledger: Ledger): Owed {
  const owed = { toPay: 0, inCredit: 0 };
  for (const account of ledger.balances.table('money').keys()) {
    if (!account.startsWith('owed:')) continue;
    const minor = ledger.balances.moneyOf(account);
    if (minor > 0) owed.toPay += minor;
    else owed.inCredit -= minor;
  }
  return owed;
}

function anyNegative(
  ledger: Ledger,
  name: 'stock' | 'credit',
  within: (account: string) => boolean,
): boolean {
  for (const [account, lines] of ledger.balances.table(name)) {
    if (within(account) && [...lines.values()].some((units) => units < 0)) return true;
  }
  return false;
}

function below(ledger: Ledger, account: string): boolean {
  return ledger.balances.moneyOf(account) < 0;
}

function total(lines: Readonly<Record<string, number>>): number {
  return Object.values(lines).reduce((sum, units) => sum + units, 0);
}

/** The accounts that make up a place, so that its list can be opened. */
export function accountsOf(place: PlaceId): {
  readonly stock?: (account: string) => boolean;
  readonly money?: (account: string) => boolean;
} {
  const only = (name: string) => (account: string) => account === name;
  const begins = (start: string) => (account: string) => account.startsWith(start);
  switch (place) {
    case 'stockroom':
      return { stock: only('stockroom'), money: only('goods') };
    case 'families':
      return { stock: begins('seller:'), money: begins('owed:') };
    case 'stalls':
      return { stock: only('stall-sold'), money: only('overshort') };
    case 'cashbox':
    case 'cards':
    case 'bank':
      return { money: only(place) };
    case 'supplier':
      return { stock: only('supplier'), money: only('supplier') };
    case 'neighbours':
      return { stock: begins('neighbour:') };
    case 'given':
      return { stock: only('gifted') };
    case 'lost':
      return { stock: only('lost'), money: only('losses') };
  }
}
