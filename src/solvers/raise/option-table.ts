import { assert } from '../../base/assert.ts';

/**
 * The multiple-choice knapsack as a table: for every cost, the greatest gain that one option from
 * each group so far can come to at exactly that cost (Kellerer, Pferschy and Pisinger, Knapsack
 * Problems, 2004, section 11.5, from memory). Exact, and its time is known beforehand: groups times
 * options times capacity, whatever the gains. A table can be continued by several others, so that
 * groups which stay the same are worked out once.
 */
export interface Option {
  /** Whole units, 0 or more. */
  readonly cost: number;
  /** A whole number; all the greatest gains of the groups together stay safe integers. */
  readonly gain: number;
}

/** An answer: the option chosen in every group, and what all of them cost together. */
export interface Chosen {
  readonly cost: number;
  readonly options: readonly number[];
}

/** Of two choices from the first groups, which is better: above 0 for the first. */
export type Better = (options: readonly number[], other: readonly number[]) => number;

export class OptionTable {
  readonly groups: readonly (readonly Option[])[];
  /** After each group, by cost; the first row is before any group. */
  private readonly rows: readonly Float64Array[];

  private constructor(groups: readonly (readonly Option[])[], rows: readonly Float64Array[]) {
    this.groups = groups;
    this.rows = rows;
  }

  /** No group yet. @param capacity whole units that all costs together may come to */
  static empty(capacity: number): OptionTable {
    return new OptionTable([], [new Float64Array(capacity + 1).fill(NEVER).fill(0, 0, 1)]);
  }

  /** This table and further groups, within the same or a smaller capacity. */
  with(groups: readonly (readonly Option[])[], capacity: number): OptionTable {
    const rows = [...this.rows];
    for (const group of groups) rows.push(afterGroup(rows.at(-1) ?? NOTHING, group, capacity));
    return new OptionTable([...this.groups, ...groups], rows);
  }

  /** The gain of the best answer at exactly each cost; minus infinity where there is none. */
  gains(): Float64Array {
    return this.rows.at(-1) ?? NOTHING;
  }

  /** One best answer of exactly this cost; of equal ones, that with the earliest options last. */
  chosenAt(cost: number): Chosen {
    const options: number[] = [];
    let at = cost;
    for (let group = this.groups.length - 1; group >= 0; group -= 1) {
      const option = this.lastSteps(group, at)[0];
      assert(option !== undefined, 'every reachable cost was reached by an option');
      options.push(option);
      at -= this.groups[group]?.[option]?.cost ?? 0;
    }
    return { cost, options: options.reverse() };
  }

  /**
   * For each of the costs the best answer, and of equally good ones the better. Only what leads to
   * an answer asked for is looked at: first back from the end, then forward again.
   */
  betterAt(costs: readonly number[], better: Better): readonly Chosen[] {
    const alive = [new Set(costs)];
    for (let group = this.groups.length - 1; group >= 0; group -= 1) {
      const before = new Set<number>();
      for (const cost of alive[0] ?? []) {
        for (const option of this.lastSteps(group, cost)) {
          before.add(cost - (this.groups[group]?.[option]?.cost ?? 0));
        }
      }
      alive.unshift(before);
    }
    let best = new Map<number, Chain | undefined>([[0, undefined]]);
    for (const group of this.groups.keys()) {
      const next = new Map<number, Chain | undefined>();
      for (const cost of alive[group + 1] ?? [])
        next.set(cost, this.bestStep(group, cost, best, better));
      best = next;
    }
    return costs.map((cost) => ({ cost, options: optionsOf(best.get(cost)) }));
  }

  private bestStep(
    group: number,
    cost: number,
    before: ReadonlyMap<number, Chain | undefined>,
    better: Better,
  ): Chain {
    let best: Chain | undefined;
    for (const option of this.lastSteps(group, cost)) {
      const paid = this.groups[group]?.[option]?.cost ?? 0;
      const chain = { option, before: before.get(cost - paid) };
      if (best === undefined || better(optionsOf(chain), optionsOf(best)) > 0) best = chain;
    }
    assert(best !== undefined, 'every cost that is alive was reached by an option');
    return best;
  }

  /** The options of a group by which the best gain at a cost can have come about. */
  private lastSteps(group: number, cost: number): number[] {
    const before = this.rows[group] ?? NOTHING;
    const gain = this.rows[group + 1]?.[cost] ?? NEVER;
    const steps: number[] = [];
    for (const [place, option] of (this.groups[group] ?? []).entries()) {
      if (option.cost > cost) continue;
      if ((before[cost - option.cost] ?? NEVER) + option.gain === gain) steps.push(place);
    }
    return steps;
  }
}

/** The options chosen so far, the latest first. */
interface Chain {
  readonly option: number;
  readonly before: Chain | undefined;
}

function optionsOf(chain: Chain | undefined): number[] {
  const options: number[] = [];
  for (let at = chain; at !== undefined; at = at.before) options.push(at.option);
  return options.reverse();
}

/** The row after one more group. A group with nothing to choose changes nothing. */
function afterGroup(
  before: Float64Array,
  group: readonly Option[],
  capacity: number,
): Float64Array {
  const [first, ...others] = group;
  const staysAsItIs = first?.cost === 0 && first.gain === 0;
  const within = before.length > capacity + 1 ? before.subarray(0, capacity + 1) : before;
  if (staysAsItIs && others.length === 0) return within;
  const after = staysAsItIs ? within.slice() : new Float64Array(within.length).fill(NEVER);
  for (const { cost, gain } of staysAsItIs ? others : group) raise(after, within, cost, gain);
  return after;
}

/** The inner loop of it all: kept apart so that it is compiled well. */
function raise(after: Float64Array, before: Float64Array, cost: number, gain: number): void {
  for (let at = cost; at < after.length; at += 1) {
    const reached = (before[at - cost] ?? NEVER) + gain;
    if (reached > (after[at] ?? NEVER)) after[at] = reached;
  }
}

const NEVER = Number.NEGATIVE_INFINITY;
const NOTHING = new Float64Array(0);
