/**
 * Notes and coins in use, as data: minor units of each, largest first. From memory and common
 * practice (the euro's 500 note is no longer printed but still found). A currency that is not here
 * has no grid: its cash is then counted as one sum.
 */
const NOTES_AND_COINS: Readonly<Record<string, Readonly<Record<'notes' | 'coins', number[]>>>> = {
  USD: { notes: [10000, 5000, 2000, 1000, 500, 200, 100], coins: [100, 50, 25, 10, 5, 1] },
  EUR: {
    notes: [50000, 20000, 10000, 5000, 2000, 1000, 500],
    coins: [200, 100, 50, 20, 10, 5, 2, 1],
  },
  GBP: { notes: [5000, 2000, 1000, 500], coins: [200, 100, 50, 20, 10, 5, 2, 1] },
  CAD: { notes: [10000, 5000, 2000, 1000, 500], coins: [200, 100, 25, 10, 5] },
  AUD: { notes: [10000, 5000, 2000, 1000, 500], coins: [200, 100, 50, 20, 10, 5] },
  NZD: { notes: [10000, 5000, 2000, 1000, 500], coins: [200, 100, 50, 20, 10] },
  JPY: { notes: [10000, 5000, 2000, 1000], coins: [500, 100, 50, 10, 5, 1] },
};

/**
 * The values of a currency's notes and coins in minor units, largest first, each once: a note and a
 * coin of the same value are counted on one line. Empty for a currency that is not known.
 */
export function denominations(currency: string): number[] {
  const known = NOTES_AND_COINS[currency];
  if (known === undefined) return [];
  return [...new Set([...known.notes, ...known.coins])].sort((a, b) => b - a);
}

/** Minor units of a tally: the value of one note or coin → pieces. */
export function tallied(tally: Readonly<Record<string, number>>): number {
  let sum = 0;
  for (const value in tally) sum += Number(value) * (tally[value] ?? 0);
  return sum;
}
