import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';
import {
  boundAt,
  cheapOptions,
  optionPrices,
  type PricedOption,
  type Prices,
} from './option-prices.ts';
import { OptionTable } from './option-table.ts';
import { waterLevel } from './water-level.ts';

/**
 * A pool of whole units that raises heights to marks: every unit is given to somebody, so that
 *
 * 1. most reach a mark of their own (the goal);
 * 2. then the worth of the common marks reached (the steps) is greatest;
 * 3. then the heights are leximin: the lowest is as high as can be, then the fewest stand at it,
 *    then the next lowest is as high as can be, and so on.
 *
 * All three exactly. 1 and 2 are a multiple-choice knapsack, since nobody gains by a height between
 * two marks. For 3, the highest floor under all heights is found at which 1 and 2 still come out
 * the same; then the answers that leave fewest at it; then the better of those by their heights.
 *
 * Ties: those that differ in nothing but who is who are settled by the order given.
 */
export interface ToRaise {
  /** Whole units to give, all of them. */
  readonly pool: number;
  readonly members: readonly Member[];
  readonly steps: readonly Step[];
}

export interface Member {
  /** Whole units so far. */
  readonly height: number;
  /** Whole units; without it there is no mark of their own. */
  readonly goal?: number;
}

export interface Step {
  /** Whole units at which it is reached. */
  readonly height: number;
  /** A whole number, 0 or more; all worths together at most `WORTH_MOST`. */
  readonly worth: number;
}

export interface Raised {
  /** Whole units given, by member. */
  readonly give: readonly number[];
  /** Members at or above their goal, those that were there before among them. */
  readonly goals: number;
  /** Worth of every step that every member stands at or above. */
  readonly worth: number;
}

/** Larger worths would leave the whole numbers that are exact in floating point. */
export const WORTH_MOST = 100_000_000;

/** @param problem at least one member, at most 200 */
export function raiseToSteps(problem: ToRaise): Raised {
  assert(problem.members.length > 0, 'somebody can be given the pool');
  const raising = new Raising(problem);
  return raising.mostEven(raising.highestFloor());
}

/** Everybody on a floor: what standing there gains, and the options above it. */
interface OnFloor {
  /** Heights of all members in the order of the tables. */
  readonly heights: readonly number[];
  readonly goals: number;
  readonly worth: number;
  /** Units left once they stand there. */
  readonly left: number;
  readonly groups: readonly (readonly PricedOption[])[];
}

class Raising {
  private readonly problem: ToRaise;
  /** What a goal counts: more than all steps of all members together. */
  private readonly goalGain: number;
  /** What gains are multiplied by in the tables, so that leaving the floor can be counted too. */
  private readonly scale: number;
  /** Heights of the steps, from the lowest, and what those up to each are worth together. */
  private readonly marks: Float64Array;
  private readonly worths: Float64Array;
  /** Options from the ground, by place of the tables: those above a floor keep them. */
  private readonly groundGroups: readonly (readonly PricedOption[])[];
  /** Places of the members in the order of the tables: those that no floor can reach come first. */
  private readonly order: readonly number[];
  private readonly highs: number;
  /** Units that could reach every mark: a table needs no more. */
  private readonly useful: number;
  private readonly prices: Prices;
  /** As many goals as the pool can reach. */
  private readonly goals: number;
  /** The greatest worth with them. */
  private readonly worth: number;
  private readonly highTable: OptionTable;
  /** A floor that some best answer stands on. */
  private readonly someFloor: number;

  constructor(problem: ToRaise) {
    this.problem = problem;
    const worth = sum(problem.steps.map((step) => step.worth));
    assert(worth <= WORTH_MOST, 'worths stay exact');
    this.goalGain = worth * problem.members.length + 1;
    this.scale = problem.members.length + 1;
    const sorted = problem.steps.toSorted((a, b) => a.height - b.height);
    this.marks = Float64Array.from(sorted, (step) => step.height);
    this.worths = Float64Array.from(sorted, (_, at) =>
      sum(sorted.slice(0, at + 1).map((step) => step.worth)),
    );
    const level = waterLevel(
      problem.members.map(({ height }) => height),
      problem.pool,
    );
    const places = [...problem.members.keys()];
    const high = places.filter((place) => this.memberAt(place).height > level);
    this.order = [...high, ...places.filter((place) => this.memberAt(place).height <= level)];
    this.highs = high.length;
    this.groundGroups = this.order.map((place) => {
      const member = this.memberAt(place);
      return this.options(member, member.height);
    });
    const ground = this.standingOn(0);
    assert(ground !== undefined, 'nobody needs to be raised to nothing');
    this.useful = Math.min(
      problem.pool,
      sum(ground.groups.map((group) => group.at(-1)?.cost ?? 0)),
    );
    this.goals = ground.goals + nearestGoals(problem);
    this.prices = optionPrices(this.knapsack(ground));
    const best = this.bestFrom(ground);
    this.worth = best.worth;
    this.highTable = best.highTable;
    this.someFloor = best.floor;
  }

  /**
   * The best answer from the ground. At first only options that lose little are looked at; where
   * the answer falls short of the bound by more than that, all that could make up for it.
   */
  private bestFrom(ground: OnFloor) {
    const { bound, losses, blur } = boundAt(this.knapsack(ground), this.prices);
    const sorted = losses.toSorted();
    let spare = sorted[Math.floor(FIRST_LOOK * this.order.length)] ?? Number.POSITIVE_INFINITY;
    for (;;) {
      const groups = cheapOptions(ground.groups, losses, spare + blur);
      const highTable = this.tableOf(groups.slice(0, this.highs), NO_FLOOR, ground);
      const table = this.tableOf(groups.slice(this.highs), 0, ground, highTable);
      const gains = table.gains();
      const cost = gains.reduce((best, gain, at) => (gain > (gains[best] ?? 0) ? at : best), 0);
      const gain = Math.floor((gains[cost] ?? 0) / this.scale);
      const goals = Math.floor(gain / this.goalGain);
      const worth = gain - goals * this.goalGain;
      const isReached = (gains[cost] ?? 0) >= 0 && goals === this.goals - ground.goals;
      if (isReached && bound - worth <= spare + blur) {
        const heights = raisedBy(ground, table, table.chosenAt(cost).options);
        const floor = waterLevel(heights, ground.left - cost);
        return { worth: ground.worth + worth, highTable, floor };
      }
      spare = isReached ? bound - worth : Number.POSITIVE_INFINITY;
    }
  }

  private knapsack({ groups, left, goals }: OnFloor) {
    return {
      groups,
      capacity: Math.min(left, this.useful),
      count: Math.max(0, this.goals - goals),
    };
  }

  /** The highest floor under all heights at which goals and worth come out as well as ever. */
  highestFloor(): number {
    let low = this.someFloor;
    let step = 1;
    while (this.canStandOn(low + step)) {
      low += step;
      step *= 2;
    }
    let high = low + step;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (this.canStandOn(middle)) low = middle;
      else high = middle;
    }
    return low;
  }

  private canStandOn(floor: number): boolean {
    const standing = this.standingOn(floor);
    const table = standing && this.bestTable(standing, floor);
    if (standing === undefined || table === undefined) return false;
    const best = this.bestGain(standing);
    return table.gains().some((gain) => Math.floor(gain / this.scale) === best);
  }

  /** Of all answers as good on the highest floor, the leximin one. */
  mostEven(floor: number): Raised {
    const standing = this.standingOn(floor);
    const table = standing && this.bestTable(standing, floor);
    assert(standing !== undefined && table !== undefined, 'the highest floor can be paid');
    const best = this.bestGain(standing);
    // A unit that takes somebody off the floor is no loss: it would have gone there anyway.
    const lost = Array.from(table.gains(), (gain, cost) => {
      const isBest = Math.floor(gain / this.scale) === best;
      return isBest ? cost - (gain % this.scale) : Number.POSITIVE_INFINITY;
    });
    const least = lost.reduce((a, b) => Math.min(a, b));
    const costs = [...lost.keys()].filter((cost) => lost[cost] === least);
    const better = (a: readonly number[], b: readonly number[]) =>
      compareLowestFirst(raisedBy(standing, table, a), raisedBy(standing, table, b));
    const even = table
      .betterAt(costs, better)
      .map(({ options, cost }) => {
        const heights = raisedBy(standing, table, options);
        return spread(heights, floor, standing.left - cost);
      })
      .reduce((most, heights) => (compareLowestFirst(heights, most) > 0 ? heights : most));
    return this.answer(even);
  }

  private answer(heights: readonly number[]): Raised {
    const give = this.problem.members.map(() => 0);
    let worth = 0;
    let goals = 0;
    for (const [at, place] of this.order.entries()) {
      const height = heights[at] ?? 0;
      give[place] = height - this.memberAt(place).height;
      worth += this.worthAt(height);
      if (isAtGoal(this.memberAt(place), height)) goals += 1;
    }
    assert(goals === this.goals && worth === this.worth, 'the answer is as good as the best');
    return { give, goals, worth };
  }

  /** What the options above a floor must gain to be as good as the best answer. */
  private bestGain(standing: OnFloor): number {
    return (this.goals - standing.goals) * this.goalGain + this.worth - standing.worth;
  }

  /** The table above a floor of all that can be part of a best answer; none where nothing can. */
  private bestTable(standing: OnFloor, floor: number): OptionTable | undefined {
    const { bound, losses, blur } = boundAt(this.knapsack(standing), this.prices);
    const spare = bound - (this.worth - standing.worth) + blur;
    if (spare < 0) return undefined;
    const groups = cheapOptions(standing.groups, losses, spare);
    return this.tableOf(groups.slice(this.highs), floor, standing, this.highTable);
  }

  private standingOn(floor: number): OnFloor | undefined {
    const members = this.order.map((place) => this.memberAt(place));
    const heights = members.map(({ height }) => Math.max(height, floor));
    const left = this.problem.pool - (sum(heights) - sum(members.map(({ height }) => height)));
    if (left < 0) return undefined;
    return {
      heights,
      goals: members.filter((member, at) => isAtGoal(member, heights[at] ?? 0)).length,
      worth: sum(heights.map((height) => this.worthAt(height))),
      left,
      groups: members.map((member, at) =>
        heights[at] === member.height
          ? (this.groundGroups[at] ?? [])
          : this.options(member, heights[at] ?? 0),
      ),
    };
  }

  /** A table of groups of options, continuing another, whose members stand on a floor or above. */
  private tableOf(
    groups: readonly (readonly PricedOption[])[],
    floor: number,
    { heights, left }: OnFloor,
    before?: OptionTable,
  ): OptionTable {
    const capacity = Math.min(left, this.useful);
    const start = before ?? OptionTable.empty(capacity);
    const scaled = groups.map((group, at) => {
      const leaves = heights[start.groups.length + at] === floor ? 1 : 0;
      return group.map(({ cost, gain, count }) => ({
        cost,
        gain: (count * this.goalGain + gain) * this.scale + (cost > 0 ? leaves : 0),
      }));
    });
    return start.with(scaled, capacity);
  }

  /** Marks above a height within reach that gain something, nearest first; before them: none. */
  private options(member: Member, height: number): PricedOption[] {
    const marks = member.goal === undefined ? this.marks : withMark(this.marks, member.goal);
    const options: PricedOption[] = [{ cost: 0, gain: 0, count: 0 }];
    const now = this.worthAt(height);
    for (const mark of marks) {
      if (mark <= height || mark - height > this.problem.pool) continue;
      const gain = this.worthAt(mark) - now;
      const count = isAtGoal(member, mark) && !isAtGoal(member, height) ? 1 : 0;
      const last = options.at(-1);
      if (last !== undefined && gain === last.gain && count === last.count) continue;
      options.push({ cost: mark - height, gain, count });
    }
    return options;
  }

  private worthAt(height: number): number {
    let at = this.marks.length - 1;
    while (at >= 0 && (this.marks[at] ?? 0) > height) at -= 1;
    return this.worths[at] ?? 0;
  }

  private memberAt(place: number): Member {
    const member = this.problem.members[place];
    assert(member !== undefined, 'a member of the problem');
    return member;
  }
}

/** High members stand on no floor. */
const NO_FLOOR = -1;

/** Sorted marks with one more among them. */
function withMark(marks: Float64Array, mark: number): Float64Array {
  const all = new Float64Array(marks.length + 1);
  all.set(marks);
  all[marks.length] = mark;
  return all.sort();
}

function isAtGoal({ goal }: Member, height: number): boolean {
  return goal !== undefined && height >= goal;
}

/** Goals that the pool reaches at most: the nearest ones first, as each counts the same. */
function nearestGoals({ members, pool }: ToRaise): number {
  const missing = members.map(({ goal, height }) => (goal ?? height) - height);
  const sorted = missing.filter((units) => units > 0).sort((a, b) => a - b);
  let left = pool;
  let reached = 0;
  for (const units of sorted) {
    if (units > left) break;
    left -= units;
    reached += 1;
  }
  return reached;
}

/** How many options a member has at the first look, on average. */
const FIRST_LOOK = 1.6;

/** Heights once the chosen options of the first groups are paid. */
function raisedBy(
  { heights }: OnFloor,
  { groups }: OptionTable,
  options: readonly number[],
): number[] {
  return options.map((option, at) => (heights[at] ?? 0) + (groups[at]?.[option]?.cost ?? 0));
}

/** Gives one unit each to those at the floor, in the order given. */
function spread(heights: readonly number[], floor: number, units: number): number[] {
  let left = units;
  const raised = heights.map((height) => {
    if (height !== floor || left === 0) return height;
    left -= 1;
    return height + 1;
  });
  assert(left === 0, 'with a unit for everybody the floor would be higher');
  return raised;
}

/** Leximin: above 0 where the first, sorted from the lowest, is the higher where they differ. */
function compareLowestFirst(a: readonly number[], b: readonly number[]): number {
  const first = a.toSorted((x, y) => x - y);
  const second = b.toSorted((x, y) => x - y);
  for (const [at, height] of first.entries()) {
    const difference = height - (second[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
