import { byName } from '../base/name-order.ts';
import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { NO_PRIZE } from '../records/no-prize.ts';
import { chosenAt, type SellerPrizes } from './prizes.ts';

/** Prizes to hand out weeks after the season, seller by seller. */
export interface HandOut {
  readonly seller: string;
  /** First name and initial. */
  readonly name: string;
  readonly prizes: readonly HandOutPrize[];
}

export interface HandOutPrize {
  readonly level: string;
  readonly prize: string;
  readonly choice?: string;
  /** A choice is missing, so that it could not be ordered with the others. */
  readonly choiceMissing: boolean;
  /** The day it was handed out. */
  readonly handed?: string;
  /** The credit does not reach the step, yet or any more: a leader decides. */
  readonly notReached: boolean;
}

/**
 * In the order of names; sellers without a prize are left out, so that the list ranks nobody. Only
 * confirmed credit counts; what was chosen before credit went back stays on it, told as such.
 */
export function handOutList(ledger: Ledger, sellers: readonly SellerPrizes[]): HandOut[] {
  const { setup } = ledger;
  const list = sellers.map((one) => ({
    seller: one.seller,
    name: setup.sellers.get(one.seller)?.name ?? one.seller,
    prizes: stepsOf(ledger, one).flatMap((level) => handOutPrize(ledger, one, level)),
  }));
  return list
    .filter((one) => one.prizes.length > 0)
    .sort((a, b) => byName(a.name, b.name) || byText(a.seller, b.seller));
}

/** Steps that were chosen or earned, and what was handed out whatever became of the credit. */
function stepsOf({ setup }: Ledger, { seller, notReached, sure }: SellerPrizes): string[] {
  const listed = new Set([...notReached, ...sure]);
  for (const { seller: whose, level, handed } of setup.choices.values()) {
    if (whose === seller && handed !== undefined) listed.add(level);
  }
  return [...listed];
}

function handOutPrize(ledger: Ledger, one: SellerPrizes, id: string): HandOutPrize[] {
  const level = ledger.setup.levels.get(id);
  if (level === undefined) return [];
  const choice = chosenAt(ledger, one.seller, level);
  const handed = ledger.setup.choices.get(`${one.seller} ${id}`)?.handed;
  if (choice === NO_PRIZE && handed === undefined) return [];
  return [
    {
      level: id,
      prize: level.prize,
      ...(choice === undefined || choice === NO_PRIZE ? {} : { choice }),
      ...(handed === undefined ? {} : { handed }),
      choiceMissing: choice === undefined && (level.choices?.length ?? 0) > 0,
      notReached: handed === undefined && one.notReached.includes(id),
    },
  ];
}
