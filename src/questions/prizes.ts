import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { RecordOf } from '../records/record.ts';

/** Which prize steps each seller's credit has earned, what is still to choose, what to order. */
export interface Prizes {
  readonly sellers: readonly SellerPrizes[];
  /** Pieces by prize step and choice; a step whose choice is missing is not ordered yet. */
  readonly order: readonly PrizeOrderLine[];
}

export interface SellerPrizes {
  readonly seller: string;
  /** Units of credit, all products together. */
  readonly credited: number;
  /** Ids of the steps earned, lowest first. */
  readonly steps: readonly string[];
  /** Ids of earned steps where the seller has not yet picked one of the choices. */
  readonly missing: readonly string[];
}

export interface PrizeOrderLine {
  readonly level: string;
  readonly prize: string;
  readonly choice?: string;
  readonly pieces: number;
}

export function prizes(ledger: Ledger): Prizes {
  const levels = [...ledger.setup.levels.values()].sort(
    (a, b) => a.units - b.units || byText(a.level, b.level),
  );
  const sellers = [...ledger.setup.sellers.keys()].map((seller) =>
    sellerPrizes(ledger, seller, levels),
  );
  return { sellers, order: prizeOrder(ledger, sellers, levels) };
}

function sellerPrizes(
  ledger: Ledger,
  seller: string,
  levels: readonly RecordOf<'level'>[],
): SellerPrizes {
  const credited = ledger.balances.unitsOf('credit', `seller:${seller}`);
  const earned = earnedSteps(credited, levels);
  const missing = earned.filter(
    (level) => needsChoice(level) && chosen(ledger, seller, level) === undefined,
  );
  return { seller, credited, steps: earned.map(idOf), missing: missing.map(idOf) };
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

/** The choice made, where it is still one of the step's choices. */
function chosen(ledger: Ledger, seller: string, level: RecordOf<'level'>): string | undefined {
  const choice = ledger.setup.choices.get(`${seller} ${level.level}`)?.choice;
  return choice !== undefined && level.choices?.includes(choice) ? choice : undefined;
}

function prizeOrder(
  ledger: Ledger,
  sellers: readonly SellerPrizes[],
  levels: readonly RecordOf<'level'>[],
): PrizeOrderLine[] {
  const order: PrizeOrderLine[] = [];
  for (const level of levels) {
    const earners = sellers.filter((seller) => seller.steps.includes(level.level));
    const { level: id, prize } = level;
    if (!needsChoice(level)) {
      if (earners.length > 0) order.push({ level: id, prize, pieces: earners.length });
      continue;
    }
    for (const choice of level.choices ?? []) {
      const pieces = earners.filter(
        (earner) => chosen(ledger, earner.seller, level) === choice,
      ).length;
      if (pieces > 0) order.push({ level: id, prize, choice, pieces });
    }
  }
  return order;
}

function idOf(level: RecordOf<'level'>): string {
  return level.level;
}
