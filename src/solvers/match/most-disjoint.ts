/** A way to explain one line by some items. */
export interface Way {
  readonly line: number;
  readonly items: readonly number[];
}

/** Ways that share no line and no item. */
export interface Packing {
  readonly chosen: readonly Way[];
  /** Whether the search ended within its bounds: no other packing has more lines. */
  readonly isExact: boolean;
}

/** How many choices may be tried before the best so far is given. */
const STEPS = 200_000;

/**
 * Chooses ways that share no line and no item: as many lines as can be, then as few items as can be
 * (set packing, by branch and bound in every part of the problem that hangs together).
 */
export function mostDisjoint(ways: readonly Way[], steps = STEPS): Packing {
  const parts = linkedParts(ways).map((part) => new PartSearch(part, steps).best());
  return {
    chosen: parts.flatMap(({ chosen }) => chosen),
    isExact: parts.every(({ isExact }) => isExact),
  };
}

/**
 * Lines that as good a packing explains in another way: as many lines in all with another of its
 * ways. A person chooses there.
 */
export function openLines(ways: readonly Way[], steps = STEPS): Set<number> {
  const open = new Set<number>();
  for (const part of linkedParts(ways)) {
    const { chosen, isExact } = new PartSearch(part, steps).best();
    const several = [...Map.groupBy(part, ({ line }) => line)].filter(([, of]) => of.length > 1);
    for (const [line] of several) {
      const own = chosen.find((way) => way.line === line);
      const others = part.filter((way) => way !== own);
      const isOther =
        own !== undefined && new PartSearch(others, steps).best().chosen.length >= chosen.length;
      if (isOther || !isExact) open.add(line);
    }
  }
  return open;
}

/** Parts that share neither lines nor items, so that each can be solved alone. */
function linkedParts(ways: readonly Way[]): Way[][] {
  const leader = [...ways.keys()];
  const root = (at: number): number => {
    let up = at;
    while ((leader[up] ?? up) !== up) up = leader[up] ?? up;
    return up;
  };
  const holder = new Map<string, number>();
  for (const [at, { line, items }] of ways.entries()) {
    for (const name of [`line ${line}`, ...items.map(String)]) {
      const other = holder.get(name);
      if (other === undefined) holder.set(name, at);
      else leader[root(at)] = root(other);
    }
  }
  const groups = Map.groupBy(ways.keys(), root);
  return [...groups.values()].map((places) => places.flatMap((at) => ways[at] ?? []));
}

class PartSearch {
  private readonly byLine: readonly (readonly Way[])[];
  private bestWays: readonly Way[] = [];
  private bestItems = 0;
  private stepsLeft: number;
  private readonly used = new Set<number>();
  private readonly chosen: Way[] = [];
  private items = 0;

  constructor(ways: readonly Way[], steps: number) {
    const groups = [...Map.groupBy(ways, ({ line }) => line).values()];
    // Lines with fewest ways first: they decide most.
    groups.sort((a, b) => a.length - b.length || (a[0]?.line ?? 0) - (b[0]?.line ?? 0));
    this.byLine = groups.map((each) => each.toSorted((a, b) => a.items.length - b.items.length));
    this.stepsLeft = steps;
  }

  best(): Packing {
    this.from(0);
    return { chosen: this.bestWays, isExact: this.stepsLeft > 0 };
  }

  private from(at: number): void {
    const { chosen, byLine } = this;
    const isMore = chosen.length > this.bestWays.length;
    if (isMore || (chosen.length === this.bestWays.length && this.items < this.bestItems)) {
      this.bestWays = [...chosen];
      this.bestItems = this.items;
    }
    const most = chosen.length + byLine.length - at;
    if (at === byLine.length || most < this.bestWays.length) return;
    // Each further line takes an item at least.
    if (most === this.bestWays.length && this.items + byLine.length - at > this.bestItems) return;
    for (const way of byLine[at] ?? []) {
      if (this.stepsLeft <= 0) return;
      this.stepsLeft -= 1;
      if (way.items.some((item) => this.used.has(item))) continue;
      this.take(way);
      this.from(at + 1);
      this.giveBack(way);
    }
    this.from(at + 1);
  }

  private take(way: Way): void {
    for (const item of way.items) this.used.add(item);
    this.chosen.push(way);
    this.items += way.items.length;
  }

  private giveBack(way: Way): void {
    for (const item of way.items) this.used.delete(item);
    this.chosen.pop();
    this.items -= way.items.length;
  }
}
