import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { NO_PRIZE } from '../records/no-prize.ts';
import type { MovementRecord, RecordOf } from '../records/record.ts';
import { unitsToBring } from './goods-to-bring.ts';

/** Which prize steps each seller's credit has earned, what is still to choose, what to order. */
export interface Prizes {
  readonly sellers: readonly SellerPrizes[];
  /**
   * Pieces by prize step and choice, for confirmed credit alone; a step whose choice is missing is
   * not ordered yet, one that was forgone never.
   */
  readonly order: readonly PrizeOrderLine[];
  /** Credit that no seller has yet, by pool: `stall:<stall>`, `post`, `gift`. */
  readonly notShared: Readonly<Record<string, number>>;
}

export interface SellerPrizes {
  readonly seller: string;
  /** Units of credit in the book, all products together; never below 0. */
  readonly credited: number;
  /** Of these, what the book itself does not doubt; what is ordered counts on it. */
  readonly confirmed: number;
  readonly pending: PendingCredit;
  /** Ids of the steps that all credit in the book earns, lowest first. */
  readonly steps: readonly string[];
  /** Those of the steps that confirmed credit earns. */
  readonly sure: readonly string[];
  /** Ids of earned steps where the seller has not yet picked one of the choices. */
  readonly missing: readonly string[];
  /** Ids of earned steps whose prize the seller does without, by choice. */
  readonly forgone: readonly string[];
  /**
   * Ids of steps that the seller chose at and that the credit does not reach: not yet, or no more,
   * since goods or an order went back late. What was ordered for them stays; a leader decides.
   */
  readonly notReached: readonly string[];
}

/** Units that are not sure, or not there yet; all products together. */
interface PendingCredit {
  /** In the book out of a stall's pool, while the stall is not settled. */
  readonly stallNotSettled: number;
  /** Not in the book yet: paid online, to be brought, not taken over. */
  readonly toBring: number;
}

export interface PrizeOrderLine {
  readonly level: string;
  readonly prize: string;
  readonly choice?: string;
  readonly pieces: number;
}

/** @param movements counting movements by the day they happened, where they are at hand already */
export function prizes(
  ledger: Ledger,
  movements: readonly MovementRecord[] = ledger.movements(),
): Prizes {
  const levels = levelsUp(ledger);
  const unsure = unsettledCredit(movements);
  const toBring = unitsToBring(movements);
  const sellers = [...ledger.setup.sellers.keys()].map((seller) => {
    const pending = {
      stallNotSettled: unsure.get(seller) ?? 0,
      toBring: toBring.get(seller) ?? 0,
    };
    return sellerPrizes(ledger, seller, levels, pending);
  });
  return { sellers, order: prizeOrder(ledger, sellers, levels), notShared: notShared(ledger) };
}

/** Prize steps, the lowest first. */
export function levelsUp(ledger: Ledger): readonly RecordOf<'level'>[] {
  return [...ledger.setup.levels.values()].sort(
    (a, b) => a.units - b.units || byText(a.level, b.level),
  );
}

/** What a seller chose at a step, where it is still offered: a choice, or no prize. */
export function chosenAt(
  ledger: Ledger,
  seller: string,
  level: RecordOf<'level'>,
): string | undefined {
  const choice = ledger.setup.choices.get(`${seller} ${level.level}`)?.choice;
  if (choice === NO_PRIZE) return NO_PRIZE;
  return choice !== undefined && level.choices?.includes(choice) ? choice : undefined;
}

function sellerPrizes(
  ledger: Ledger,
  seller: string,
  levels: readonly RecordOf<'level'>[],
  pending: PendingCredit,
): SellerPrizes {
  const balance = ledger.balances.unitsOf('credit', `seller:${seller}`);
  const credited = Math.max(0, balance);
  const confirmed = Math.max(0, balance - pending.stallNotSettled);
  const earned = earnedSteps(credited, levels);
  const chosen = (level: RecordOf<'level'>) => chosenAt(ledger, seller, level);
  const missing = earned.filter((level) => needsChoice(level) && chosen(level) === undefined);
  const notReached = levels.filter((level) => {
    const choice = chosen(level);
    return level.units > credited && choice !== undefined && choice !== NO_PRIZE;
  });
  return {
    seller,
    credited,
    confirmed,
    pending,
    steps: earned.map(idOf),
    sure: earnedSteps(confirmed, levels).map(idOf),
    missing: missing.map(idOf),
    forgone: earned.filter((level) => chosen(level) === NO_PRIZE).map(idOf),
    notReached: notReached.map(idOf),
  };
}

/** Steps reached, lowest first; a step that takes the place of lower ones drops them. */
function earnedSteps(
  credited: number,
  levels: readonly RecordOf<'level'>[],
): readonly RecordOf<'level'>[] {
  const reached = levels.filter((level) => level.units <= credited);
  const replacing = reached.findLastIndex((level) => level.each === false);
  return replacing === -1 ? reached : reached.slice(replacing);
}

function needsChoice(level: RecordOf<'level'>): boolean {
  return (level.choices?.length ?? 0) > 0;
}

function prizeOrder(
  ledger: Ledger,
  sellers: readonly SellerPrizes[],
  levels: readonly RecordOf<'level'>[],
): PrizeOrderLine[] {
  const order: PrizeOrderLine[] = [];
  for (const level of levels) {
    const choices = sellers
      .filter((seller) => seller.sure.includes(level.level))
      .map(({ seller }) => chosenAt(ledger, seller, level));
    const { level: id, prize } = level;
    if (!needsChoice(level)) {
      const pieces = choices.filter((choice) => choice !== NO_PRIZE).length;
      if (pieces > 0) order.push({ level: id, prize, pieces });
      continue;
    }
    for (const choice of level.choices ?? []) {
      const pieces = choice === NO_PRIZE ? 0 : choices.filter((each) => each === choice).length;
      if (pieces > 0) order.push({ level: id, prize, choice, pieces });
    }
  }
  return order;
}

/** Units shared to each seller out of pools of stalls that no count has settled. */
function unsettledCredit(movements: readonly MovementRecord[]): ReadonlyMap<string, number> {
  const settled = new Set<string>();
  for (const movement of movements) {
    if (movement.kind === 'stall-close') settled.add(`stall:${movement.stall}`);
  }
  const unsure = new Map<string, number>();
  for (const movement of movements) {
    if (movement.kind !== 'shareout' || !movement.pool.startsWith('stall:')) continue;
    if (settled.has(movement.pool)) continue;
    for (const [seller, lines] of Object.entries(movement.lines)) {
      const units = Object.values(lines).reduce((sum, each) => sum + each, 0);
      unsure.set(seller, (unsure.get(seller) ?? 0) + units);
    }
  }
  return unsure;
}

function notShared(ledger: Ledger): Record<string, number> {
  const pools: [string, number][] = [];
  for (const account of ledger.balances.table('credit').keys()) {
    if (!account.startsWith('pool:')) continue;
    const units = ledger.balances.unitsOf('credit', account);
    if (units !== 0) pools.push([account.slice('pool:'.length), units]);
  }
  return Object.fromEntries(pools.sort((a, b) => byText(a[0], b[0])));
}

function idOf(level: RecordOf<'level'>): string {
  return level.level;
}
