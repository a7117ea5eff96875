import type { Situation } from './situation.ts';

/**
 * Weight of everything that is not looked for: goods that went missing, a miscount of the count
 * itself, a number keyed quite otherwise. The more that differs, and the more accounts agree on
 * how, the less likely it is that something else came to just this difference. Assumed, and held
 * against the seeded mistakes.
 */
export function otherwise(situation: Situation): number {
  const { effects, difference } = situation;
  const accounts = new Set<string>();
  const units = new Map<string, number>();
  let minor = 0;
  for (const place of difference.places) {
    const { ledger, account, product } = effects.places.at(place);
    const amount = Math.abs(situation.offAt(place));
    accounts.add(`${ledger}:${account}`);
    if (ledger === 'money') minor = Math.max(minor, amount);
    else units.set(product, Math.max(amount, units.get(product) ?? 0));
  }
  const isShelf = accounts.size === 1 && accounts.has('stock:stockroom');
  if (isShelf) return onShelf([...units.values()]);
  const party = RECORD * ofParties(situation, accounts);
  if (units.size === 0) return (party * MINOR) / minor;
  let weight = party;
  let picked = 0;
  for (const off of units.values()) {
    weight *= (UNITS / off) * ((picked + 1) / Math.max(1, situation.products.length - picked));
    picked += 1;
  }
  return weight;
}

/** Goods that went or came without a record, or a miscount of the count, product by product. */
function onShelf(units: readonly number[]): number {
  return units.reduce((weight, off) => weight * (SHELF / off ** 1.5), 1);
}

/** Chance that it is just these families and neighbours whose accounts differ. */
function ofParties(situation: Situation, accounts: ReadonlySet<string>): number {
  const named = new Set<string>();
  for (const account of accounts) {
    const party = /^(?:stock:seller|money:owed|credit:seller|stock:neighbour):(.*)$/.exec(
      account,
    )?.[1];
    if (party !== undefined) named.add(party);
  }
  return (1 / Math.max(1, situation.sellers.length)) ** named.size;
}

const SHELF = 0.003;
const RECORD = 0.0005;
/** Chance of just so many units, times the units; of just such an amount, times the amount. */
const UNITS = 0.12;
const MINOR = 3;
