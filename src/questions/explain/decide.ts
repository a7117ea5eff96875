import { sortedEntries } from '../../base/order.ts';
import { addTo } from '../../solvers/gap/effect.ts';
import type { Evidence } from './evidence.ts';
import type { Explanation } from './explain.ts';
import type { Situation } from './situation.ts';

/** The one further look that would tell most. */
export interface Look {
  /** `ledger:account`, as in an observation. */
  readonly account: string;
  /** `tells-apart`: not looked at yet, and the explanations differ in it; else to count again. */
  readonly why: 'tells-apart' | 'count-again';
  /** What to look at there, where it is goods; no products where it is money. */
  readonly products: readonly string[];
}

/** Accounts that somebody can look at: a shelf, a family, a neighbour, the bank, the supplier. */
const CAN_BE_SEEN =
  /^(?:stock:(?:stockroom|seller:|neighbour:)|money:(?:owed:|bank|cashbox|cards|supplier))/;

/**
 * The smallest further look that would decide between explanations: the account, not looked at yet,
 * in which they differ most, weighed by their odds. Where there are none, the account that differs
 * in the fewest products is to be counted again. Undefined where one explanation stands alone.
 */
export function lookThatDecides(
  situation: Situation,
  evidence: Evidence,
  explanations: readonly Explanation[],
): Look | undefined {
  if (explanations.length === 0) return countAgain(situation);
  const all = explanations.reduce((sum, { odds }) => sum + odds, 0);
  const sorts = new Map<string, Map<string, number>>();
  const products = new Map<string, Set<string>>();
  for (const [at, { mistakes }] of explanations.entries()) {
    const amounts = new Map<number, number>();
    for (const mistake of mistakes) addTo(amounts, evidence.effectOn(mistake), 1);
    for (const [place, amount] of amounts) {
      const { ledger, account, product } = evidence.places.at(place);
      const name = `${ledger}:${account}`;
      if (amount === 0 || situation.isSeen(ledger, account) || !CAN_BE_SEEN.test(name)) continue;
      const told = sorts.get(name) ?? new Map<string, number>();
      sorts.set(name, told);
      told.set(`${at}`, (told.get(`${at}`) ?? 0) * 31 + amount);
      if (product !== '') products.set(name, (products.get(name) ?? new Set()).add(product));
    }
  }
  let best: Look | undefined;
  let least = TOO_ALIKE;
  for (const [account, told] of sortedEntries(sorts)) {
    const alike = likeness(explanations, told, all);
    if (alike >= least) continue;
    least = alike;
    best = { account, why: 'tells-apart', products: [...(products.get(account) ?? [])].sort() };
  }
  return best;
}

/** Chance that two explanations, drawn by their odds, would show the same there. */
function likeness(
  explanations: readonly Explanation[],
  told: ReadonlyMap<string, number>,
  all: number,
): number {
  const groups = new Map<number, number>();
  for (const [at, { odds }] of explanations.entries()) {
    const shows = told.get(`${at}`) ?? 0;
    groups.set(shows, (groups.get(shows) ?? 0) + odds / all);
  }
  return [...groups.values()].reduce((sum, part) => sum + part * part, 0);
}

const TOO_ALIKE = 0.9;

function countAgain(situation: Situation): Look | undefined {
  const byAccount = new Map<string, string[]>();
  for (const place of situation.difference.places) {
    const { ledger, account, product } = situation.effects.places.at(place);
    const name = `${ledger}:${account}`;
    const own = byAccount.get(name) ?? [];
    byAccount.set(name, own);
    if (product !== '') own.push(product);
  }
  const [fewest] = sortedEntries(byAccount)
    .filter(([name]) => CAN_BE_SEEN.test(name))
    .sort((a, b) => a[1].length - b[1].length);
  return fewest && { account: fewest[0], why: 'count-again', products: fewest[1] };
}
