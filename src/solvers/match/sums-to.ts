/** Limits of a search for sums. */
export interface SumLimits {
  /** Most members of a sum. */
  readonly members: number;
  /** Stop after so many sums. */
  readonly found: number;
}

/**
 * Sets of places whose values add up exactly to a target, the smallest sets first and, among those
 * of one size, by their places. All values above 0. Searched from the largest value down, and never
 * where all that is left is too little or the smallest are too much (subset sum by branch and
 * bound; Martello and Toth, Knapsack Problems, 1990, chapter 4, from memory).
 */
export function sumsTo(values: readonly number[], target: number, limits: SumLimits): number[][] {
  const order = [...values.keys()].sort((a, b) => (values[b] ?? 0) - (values[a] ?? 0) || a - b);
  const sorted = order.map((place) => values[place] ?? 0);
  const found: number[][] = [];
  for (let size = 1; size <= Math.min(limits.members, sorted.length); size += 1) {
    searchSize(sorted, target, size, limits.found - found.length, (places) =>
      found.push(places.map((at) => order[at] ?? 0).sort((a, b) => a - b)),
    );
    if (found.length >= limits.found) break;
  }
  return found;
}

/** All sums of exactly so many values. @param sorted from the largest to the smallest */
function searchSize(
  sorted: readonly number[],
  target: number,
  size: number,
  most: number,
  tell: (places: readonly number[]) => void,
): void {
  const chosen: number[] = [];
  let told = 0;
  const from = (at: number, left: number): void => {
    const missing = size - chosen.length;
    if (missing === 0) {
      if (left === 0) {
        tell(chosen);
        told += 1;
      }
      return;
    }
    const smallest = sorted.at(-1) ?? 0;
    for (let next = at; next <= sorted.length - missing && told < most; next += 1) {
      const value = sorted[next] ?? 0;
      if (value * missing < left) return;
      if (value + smallest * (missing - 1) > left) continue;
      chosen.push(next);
      from(next + 1, left - value);
      chosen.pop();
    }
  };
  from(0, target);
}
