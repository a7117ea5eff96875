import { assert } from '../../base/assert.ts';
import { sum } from '../../base/sum.ts';
import {
  boundAt,
  type CheapOption,
  cheapOptions,
  optionPrices,
  type PricedOption,
  type Prices,
} from './option-prices.ts';
import { type Limits, OptionTable } from './option-table.ts';
import { type Step, StepMarks } from './step-marks.ts';
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
  /** All worths together at most `WORTH_MOST`. */
  readonly steps: readonly Step[];
}

export interface Member {
  /** Whole units so far. */
  readonly height: number;
  /** Whole units; without it there is no mark of their own. */
  readonly goal?: number;
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
  private readonly marks: StepMarks;
  /** Options from the ground, by place of the tables: those above a floor keep them. */
  private readonly groundGroups: readonly (readonly PricedOption[])[];
  /** Places of the members in the order of the tables: those that no floor can reach come first. */
  private readonly order: readonly number[];
  private readonly highs: number;
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
    this.marks = new StepMarks(problem.steps);
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
    this.goals = ground.goals + nearestGoals(problem);
    this.prices = optionPrices(this.knapsack(ground));
    const best = this.bestFrom(ground);
    this.worth = best.worth;
    this.highTable = best.highTable;
    this.someFloor = best.floor;
  }

  /**
   * The best answer from the ground. At first only what loses no more than the price of a unit is
   * looked at, then twice as much, until the best found falls short of the bound by no more.
   */
  private bestFrom(ground: OnFloor) {
    const { bound, losses, blur } = boundAt(this.knapsack(ground), this.prices);
    for (let spare = Math.max(1, this.prices.price) + blur; ; spare *= 2) {
      assert(spare < Number.POSITIVE_INFINITY, 'as many goals can be reached as were counted');
      const groups = cheapOptions(ground.groups, losses, spare);
      const limits = { capacity: ground.left, spare };
      const highTable = this.tableOf(groups.slice(0, this.highs), NO_FLOOR, ground, limits);
      const table = this.tableOf(groups.slice(this.highs), 0, ground, limits, highTable);
      const {
        gain,
        costs: [cost = 0],
      } = table.best();
      const goals = Math.floor(gain / this.goalGain);
      const worth = gain - goals * this.goalGain;
      if (goals < this.goals - ground.goals || bound - worth > spare) continue;
      const heights = raisedBy(ground, table, table.chosenAt(cost).options);
      const floor = waterLevel(heights, ground.left - cost);
      return { worth: ground.worth + worth, highTable, floor };
    }
  }

  private knapsack({ groups, left, goals }: OnFloor) {
    return { groups, capacity: left, count: this.goals - goals };
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
    return table.best().gain === this.bestGain(standing);
  }

  /** Of all answers as good on the highest floor, the leximin one. */
  mostEven(floor: number): Raised {
    const standing = this.standingOn(floor);
    const table = standing && this.bestTable(standing, floor);
    assert(standing !== undefined && table !== undefined, 'the highest floor can be paid');
    const { gain, costs } = table.best();
    assert(gain === this.bestGain(standing), 'the highest floor can be stood on');
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
      worth += this.marks.worthAt(height);
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
    const groups = cheapOptions(standing.groups, losses, spare).slice(this.highs);
    const limits = { capacity: standing.left, spare };
    return this.tableOf(groups, floor, standing, limits, this.highTable);
  }

  private standingOn(floor: number): OnFloor | undefined {
    const members = this.order.map((place) => this.memberAt(place));
    const heights = members.map(({ height }) => Math.max(height, floor));
    const left = this.problem.pool - (sum(heights) - sum(members.map(({ height }) => height)));
    if (left < 0) return undefined;
    return {
      heights,
      goals: members.filter((member, at) => isAtGoal(member, heights[at] ?? 0)).length,
      worth: sum(heights.map((height) => this.marks.worthAt(height))),
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
    groups: readonly (readonly CheapOption[])[],
    floor: number,
    { heights }: OnFloor,
    limits: Limits,
    start = OptionTable.empty(),
  ): OptionTable {
    const options = groups.map((group, at) => {
      const leaves = heights[start.groups.length + at] === floor ? 1 : 0;
      return group.map(({ cost, gain, count, loss }) => ({
        cost,
        gain: count * this.goalGain + gain,
        // A unit that takes somebody off the floor is none: it would have gone there anyway.
        waste: cost - (cost > 0 ? leaves : 0),
        loss,
      }));
    });
    return start.with(options, limits);
  }

  private options({ goal }: Member, height: number): readonly PricedOption[] {
    return this.marks.optionsFrom(height, goal, this.problem.pool);
  }

  private memberAt(place: number): Member {
    const member = this.problem.members[place];
    assert(member !== undefined, 'a member of the problem');
    return member;
  }
}

/** High members stand on no floor. */
const NO_FLOOR = -1;

function isAtGoal({ goal }: Member, height: number): boolean {
  return goal !== undefined && height >= goal;
}

/** Goals that the pool reaches at most: the nearest ones first, as each counts the same. */
function nearestGoals({ members, pool }: ToRaise): number {
  const missing = members.map(({ goal, height }) => (goal ?? height) - height);
  const sorted = Float64Array.from(missing.filter((units) => units > 0)).sort();
  let left = pool;
  let reached = 0;
  for (const units of sorted) {
    if (units > left) break;
    left -= units;
    reached += 1;
  }
  return reached;
}

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

/**
 * Leximin: above 0 where the first, sorted from the lowest, is the higher where they differ. What
 * both have in the same place never decides, so only the rest is sorted.
 */
function compareLowestFirst(a: readonly number[], b: readonly number[]): number {
  const first = Float64Array.from(a.filter((height, at) => height !== b[at])).sort();
  const second = Float64Array.from(b.filter((height, at) => height !== a[at])).sort();
  for (const [at, height] of first.entries()) {
    const difference = height - (second[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
