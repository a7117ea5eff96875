/** A way to explain one line by some items. */
export interface Way {
  readonly line: number;
  readonly items: readonly number[];
}

/**
 * Chooses ways that share no line and no item: as many lines as can be, then as few items as can be
 * (set packing). Exact where the search ends within its bounds, which it says.
 *
 * @param steps how many choices may be tried before the best so far is given
 */
export function mostDisjoint(
  ways: readonly Way[],
  steps = 200_000,
): { readonly chosen: readonly Way[]; readonly isExact: boolean } {
  const byLine = [...Map.groupBy(ways, ({ line }) => line).values()];
  // Lines with fewest ways first: they decide most.
  byLine.sort((a, b) => a.length - b.length || (a[0]?.line ?? 0) - (b[0]?.line ?? 0));
  let best: readonly Way[] = [];
  let left = steps;
  const used = new Set<number>();
  const chosen: Way[] = [];
  const isBetter = () =>
    chosen.length > best.length ||
    (chosen.length === best.length && itemsIn(chosen) < itemsIn(best));
  const from = (at: number): void => {
    if (isBetter()) best = [...chosen];
    if (at === byLine.length || chosen.length + byLine.length - at < best.length) return;
    for (const way of byLine[at] ?? []) {
      if (left === 0) return;
      left -= 1;
      if (way.items.some((item) => used.has(item))) continue;
      for (const item of way.items) used.add(item);
      chosen.push(way);
      from(at + 1);
      chosen.pop();
      for (const item of way.items) used.delete(item);
      // With every line explained nothing is left to gain but fewer items.
      if (best.length === byLine.length && isLean(best, byLine)) return;
    }
    from(at + 1);
  };
  from(0);
  return { chosen: best, isExact: left > 0 };
}

function itemsIn(ways: readonly Way[]): number {
  return ways.reduce((sum, { items }) => sum + items.length, 0);
}

/** Whether every line has its smallest way. */
function isLean(ways: readonly Way[], byLine: readonly (readonly Way[])[]): boolean {
  const least = byLine.reduce(
    (sum, each) => sum + Math.min(...each.map(({ items }) => items.length)),
    0,
  );
  return itemsIn(ways) === least;
}
