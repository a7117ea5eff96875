import { assert } from '../../base/assert.ts';
import { ReachedList } from './reached-list.ts';

/**
 * The multiple-choice knapsack as a table: after each group, at which costs what can be gained by
 * one option from each group so far (Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004,
 * section 11.5, from memory). Exact. It keeps only what can still become a best answer: what costs
 * more than another and is worse is left out, and so is what a bound rules out, since losses add up
 * over the options taken. So its size goes by how many answers are nearly best, not by the
 * capacity. A table can be continued by several others, so that groups which stay the same are
 * worked out once.
 */
export interface Option {
  /** Whole units, 0 or more. */
  readonly cost: number;
  /** A whole number; all the greatest gains of the groups together stay safe integers. */
  readonly gain: number;
  /** Of two answers that gain the same the one that wastes less is better; 0 or more. */
  readonly waste: number;
  /** How much lower the bound is once it is taken, 0 or more; 0 where there is no bound. */
  readonly loss: number;
}

export interface Limits {
  /** Whole units that all costs together may come to. */
  readonly capacity: number;
  /** What all losses together may come to. */
  readonly spare: number;
}

export interface Best {
  /** Minus infinity where the limits leave no answer. */
  readonly gain: number;
  /** From the lowest. */
  readonly costs: readonly number[];
}

/** An answer: the option chosen in every group, and what all of them cost together. */
export interface Chosen {
  readonly cost: number;
  readonly options: readonly number[];
}

type Groups = readonly (readonly Option[])[];

/** Of two choices from the first groups, which is better: above 0 for the first. */
export type Better = (options: readonly number[], other: readonly number[]) => number;

/** Where in the list the row of what is reached after a group stands. */
interface Row {
  readonly start: number;
  readonly end: number;
}

export class OptionTable {
  readonly groups: Groups;
  /** After each group; the first row is before any group. */
  private readonly rows: readonly Row[];
  private readonly list: ReachedList;

  private constructor(groups: Groups, rows: readonly Row[], list: ReachedList) {
    this.groups = groups;
    this.rows = rows;
    this.list = list;
  }

  /** No group yet: nothing is chosen, and nothing paid. */
  static empty(): OptionTable {
    const list = new ReachedList(1);
    list.add(0, 0, 0, 0);
    return new OptionTable([], [{ start: 0, end: 1 }], list);
  }

  /** This table and further groups, within the same or narrower limits. */
  with(groups: Groups, limits: Limits): OptionTable {
    const list = this.list.copy();
    const drafts = [new ReachedList(DRAFT), new ReachedList(DRAFT)] as const;
    const rows = this.rows.slice();
    let row = this.lastRow(limits.capacity);
    rows[rows.length - 1] = row;
    for (const group of groups) {
      row = afterGroup(list, drafts, row, group, limits);
      rows.push(row);
    }
    return new OptionTable([...this.groups, ...groups], rows, list);
  }

  /** The greatest gain, with the least waste, and at which costs it can be had. */
  best(): Best {
    const { start, end } = this.lastRow();
    const { costs, gains, wastes } = this.list;
    const gain = end > start ? (gains[end - 1] ?? NEVER) : NEVER;
    const best: number[] = [];
    for (let at = end - 1; at >= start; at -= 1) {
      if (gains[at] !== gain || wastes[at] !== wastes[end - 1]) break;
      best.push(costs[at] ?? 0);
    }
    return { gain, costs: best.reverse() };
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
    let best = new Map<number, Link | undefined>([[0, undefined]]);
    for (const [group, alive] of this.aliveAfter(costs).entries()) {
      if (this.isSameAfter(group)) continue;
      const next = new Map<number, Link | undefined>();
      for (const cost of alive) next.set(cost, this.bestStep(group, cost, best, better));
      best = next;
    }
    const options = (cost: number) => optionsOf(best.get(cost), this.groups.length);
    return costs.map((cost) => ({ cost, options: options(cost) }));
  }

  /** After each group: the costs that the best answers at some costs have come to by then. */
  private aliveAfter(costs: readonly number[]): ReadonlySet<number>[] {
    const alive = [new Set(costs)];
    let last = new Set(costs);
    for (let group = this.groups.length - 1; group > 0; group -= 1) {
      if (!this.isSameAfter(group)) {
        const before = new Set<number>();
        for (const cost of last) {
          for (const option of this.lastSteps(group, cost)) {
            before.add(cost - (this.groups[group]?.[option]?.cost ?? 0));
          }
        }
        last = before;
      }
      alive.push(last);
    }
    return alive.reverse();
  }

  /** True where a group has nothing to choose. */
  private isSameAfter(group: number): boolean {
    return this.rows[group] === this.rows[group + 1];
  }

  private bestStep(
    group: number,
    cost: number,
    before: ReadonlyMap<number, Link | undefined>,
    better: Better,
  ): Link {
    let best: Link | undefined;
    for (const option of this.lastSteps(group, cost)) {
      const paid = this.groups[group]?.[option]?.cost ?? 0;
      const link = { group, option, before: before.get(cost - paid) };
      const isBetter = () => better(optionsOf(link, group + 1), optionsOf(best, group + 1)) > 0;
      if (best === undefined || isBetter()) best = link;
    }
    assert(best !== undefined, 'every cost that is alive was reached by an option');
    return best;
  }

  /** The options of a group by which the best that is reached at a cost can have come about. */
  private lastSteps(group: number, cost: number): number[] {
    const { gains, wastes } = this.list;
    const to = this.find(group + 1, cost);
    const steps: number[] = [];
    for (const [place, option] of (this.groups[group] ?? []).entries()) {
      const from = this.find(group, cost - option.cost);
      if (from === undefined || to === undefined) continue;
      const isReached =
        (gains[from] ?? 0) + option.gain === gains[to] &&
        (wastes[from] ?? 0) + option.waste === wastes[to];
      if (isReached) steps.push(place);
    }
    return steps;
  }

  /** Where in the list a cost is that is reached after so many groups. */
  private find(groups: number, cost: number): number | undefined {
    const { costs } = this.list;
    let { start, end } = this.rows[groups] ?? NO_ROW;
    while (start < end) {
      const middle = (start + end) >>> 1;
      const found = costs[middle] ?? 0;
      if (found === cost) return middle;
      if (found < cost) start = middle + 1;
      else end = middle;
    }
    return undefined;
  }

  private lastRow(capacity = Number.POSITIVE_INFINITY): Row {
    const { start, end } = this.rows.at(-1) ?? NO_ROW;
    let within = end;
    while (within > start && (this.list.costs[within - 1] ?? 0) > capacity) within -= 1;
    return { start, end: within };
  }
}

/** A choice in a group, and the choices before it; in groups between them, the first option. */
interface Link {
  readonly group: number;
  readonly option: number;
  readonly before: Link | undefined;
}

/** The options chosen in the first groups. */
function optionsOf(last: Link | undefined, groups: number): number[] {
  const options = new Array<number>(groups).fill(0);
  for (let link = last; link !== undefined; link = link.before) options[link.group] = link.option;
  return options;
}

/** Adds to a list the row after one more group. A group with nothing to choose changes nothing. */
function afterGroup(
  list: ReachedList,
  [draft, otherDraft]: readonly [ReachedList, ReachedList],
  before: Row,
  group: readonly Option[],
  limits: Limits,
): Row {
  const [first] = group;
  const isNothing = first && first.cost + first.gain + first.waste + first.loss === 0;
  if (isNothing && group.length === 1) return before;
  list.start = list.length;
  draft.length = 0;
  let soFar = draft;
  for (const [place, option] of group.entries()) {
    const next = soFar === draft ? otherDraft : draft;
    next.length = 0;
    const into = place === group.length - 1 ? list : next;
    addOption(into, soFar, list, before, option, limits);
    soFar = into;
  }
  return { start: list.start, end: list.length };
}

/** Into a row: what other options of the group reach, and what this one does; by rising cost. */
function addOption(
  into: ReachedList,
  others: ReachedList,
  list: ReachedList,
  before: Row,
  option: Option,
  { capacity, spare }: Limits,
): void {
  let other = 0;
  for (let at = before.start; at < before.end; at += 1) {
    const cost = (list.costs[at] ?? 0) + option.cost;
    const loss = (list.losses[at] ?? 0) + option.loss;
    if (cost > capacity) break;
    if (loss > spare) continue;
    while (other < others.length && (others.costs[other] ?? 0) <= cost) {
      into.addFrom(others, other);
      other += 1;
    }
    into.add(
      cost,
      (list.gains[at] ?? 0) + option.gain,
      (list.wastes[at] ?? 0) + option.waste,
      loss,
    );
  }
  for (; other < others.length; other += 1) into.addFrom(others, other);
}

const NEVER = Number.NEGATIVE_INFINITY;
const NO_ROW: Row = { start: 0, end: 0 };
/** Room for rows of a group that are not yet done. */
const DRAFT = 256;
