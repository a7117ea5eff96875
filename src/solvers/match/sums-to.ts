/** Limits of a search for sums. */
export interface SumLimits {
  /** Most members of a sum. */
  readonly members: number;
  /** Stop after so many sums. */
  readonly found: number;
  /** Stop after so many choices tried; without it, when every set was looked at. */
  readonly steps?: number;
}

export interface Sums {
  /** Sets of places in the list of values, the smallest sets first. */
  readonly sets: readonly (readonly number[])[];
  /** Whether every set within the most members was looked at, or `found` were found. */
  readonly isComplete: boolean;
}

/**
 * Sets of places whose values add up exactly to a target, the smallest sets first and, among those
 * of one size, the largest values first. All values above 0. Searched from the largest value down,
 * and never where all that is left is too little or the smallest are too much (subset sum by branch
 * and bound; Martello and Toth, Knapsack Problems, 1990, chapter 4, from memory).
 */
export function sumsTo(values: readonly number[], target: number, limits: SumLimits): Sums {
  const small = [...values.keys()].filter((place) => (values[place] ?? 0) <= target);
  const order = small.sort((a, b) => (values[b] ?? 0) - (values[a] ?? 0) || a - b);
  const sorted = order.map((place) => values[place] ?? 0);
  const search = new SizeSearch(sorted, target, limits);
  for (let size = 1; size <= Math.min(limits.members, sorted.length); size += 1) {
    if (!search.look(size)) break;
  }
  const sets = search.found.map((places) =>
    places.map((at) => order[at] ?? 0).sort((a, b) => a - b),
  );
  return { sets, isComplete: search.stepsLeft > 0 };
}

class SizeSearch {
  readonly found: number[][] = [];
  stepsLeft: number;
  private readonly sorted: readonly number[];
  private readonly target: number;
  private readonly most: number;
  /** Sums of the first so many values. */
  private readonly before: number[] = [0];
  private readonly chosen: number[] = [];

  /** @param sorted from the largest to the smallest */
  constructor(sorted: readonly number[], target: number, { found, steps }: SumLimits) {
    this.sorted = sorted;
    this.target = target;
    this.most = found;
    this.stepsLeft = steps ?? Number.POSITIVE_INFINITY;
    for (const value of sorted) this.before.push((this.before.at(-1) ?? 0) + value);
  }

  /** Looks at all sets of exactly so many values; false when a limit was met. */
  look(size: number): boolean {
    this.from(0, this.target, size);
    return this.stepsLeft > 0 && this.found.length < this.most;
  }

  private from(at: number, left: number, missing: number): void {
    if (missing === 0) {
      if (left === 0) this.found.push([...this.chosen]);
      return;
    }
    const { sorted, before } = this;
    const length = sorted.length;
    const smallest = (before[length] ?? 0) - (before[length - missing + 1] ?? 0);
    for (let next = at; next <= length - missing; next += 1) {
      if (this.found.length >= this.most || this.stepsLeft <= 0) return;
      this.stepsLeft -= 1;
      const largest = (before[next + missing] ?? 0) - (before[next] ?? 0);
      if (largest < left) return;
      const value = sorted[next] ?? 0;
      if (value + smallest > left) continue;
      this.chosen.push(next);
      this.from(next + 1, left - value, missing - 1);
      this.chosen.pop();
    }
  }
}
