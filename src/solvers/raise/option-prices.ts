import { assert } from '../../base/assert.ts';

/**
 * Prices that tell which options of a multiple-choice knapsack can be part of a best answer: a
 * price for each unit of cost and a bonus for each option that counts. Taking in every group what
 * is best at these prices bounds all answers from above, and an option that is worse there by more
 * than the bound exceeds a known answer is in no better one (Lagrange's relaxation; Kellerer,
 * Pferschy and Pisinger, Knapsack Problems, 2004, section 11.2, from memory). Any prices give a
 * true bound; these give nearly the lowest.
 */
export interface PricedOption {
  /** Whole units, 0 or more. */
  readonly cost: number;
  /** A whole number, 0 or more. */
  readonly gain: number;
  /** 1 where the option counts, else 0. */
  readonly count: number;
}

export interface CheapOption extends PricedOption {
  /** How much lower the bound is once it is taken. */
  readonly loss: number;
}

export interface PricedProblem {
  /** In each group by rising cost: first those that do not count, at least one, then the others. */
  readonly groups: readonly (readonly PricedOption[])[];
  readonly capacity: number;
  /** How many chosen options are to count; so many can within the capacity. */
  readonly count: number;
}

export interface Prices {
  /** For each unit of cost. */
  readonly price: number;
  /** For each option that counts. */
  readonly bonus: number;
}

/** Prices at which the bound is nearly lowest. */
export function optionPrices(problem: PricedProblem): Prices {
  const corners = cornersOf(problem);
  const { price, bonus } = lowestPoint((at) => boundAtPrice(corners, at), averagePrice(corners));
  return { price, bonus };
}

/**
 * The options that are best in their group at some prices, one after the other, for the loops that
 * go through them again and again: the corners of the upper hull of gain over cost, of those that
 * do not count and then of those that do.
 */
interface Corners {
  readonly cost: Float64Array;
  readonly gain: Float64Array;
  /** Where in each group those that do not count end, and where all end. */
  readonly plainEnds: Int32Array;
  readonly ends: Int32Array;
  readonly capacity: number;
  readonly wanted: number;
}

function cornersOf({ groups, capacity, count: wanted }: PricedProblem): Corners {
  const size = groups.reduce((all, group) => all + group.length, 0);
  const cost = new Float64Array(size);
  const gain = new Float64Array(size);
  const plainEnds = new Int32Array(groups.length);
  const ends = new Int32Array(groups.length);
  let end = 0;
  for (let place = 0; place < groups.length; place += 1) {
    let hull = end;
    let counted = 0;
    for (const option of groups[place] ?? []) {
      if (option.count !== counted) {
        plainEnds[place] = end;
        hull = end;
      }
      counted = option.count;
      while (end - hull >= 2 && isUnderLine(cost, gain, end, option)) end -= 1;
      cost[end] = option.cost;
      gain[end] = option.gain;
      end += 1;
    }
    if (counted === 0) plainEnds[place] = end;
    ends[place] = end;
  }
  return { cost, gain, plainEnds, ends, capacity, wanted };
}

/** True where the last of the corners before an end lies on or under the line to the option. */
function isUnderLine(
  cost: Float64Array,
  gain: Float64Array,
  end: number,
  option: PricedOption,
): boolean {
  const lastCost = cost[end - 1] ?? 0;
  const lastGain = gain[end - 1] ?? 0;
  const costBefore = lastCost - (cost[end - 2] ?? 0);
  const gainBefore = lastGain - (gain[end - 2] ?? 0);
  return gainBefore * (option.cost - lastCost) <= (option.gain - lastGain) * costBefore;
}

/** What a unit gains on average where every group takes the most. */
function averagePrice({ cost, gain, ends }: Corners): number {
  let units = 0;
  let gains = 0;
  for (const end of ends) {
    units += cost[end - 1] ?? 0;
    gains += gain[end - 1] ?? 0;
  }
  return units > 0 && gains > 0 ? gains / units : 1;
}

/** The bound at a price, its slope towards a higher one, and the bonus at which it is that low. */
interface Point extends Prices {
  readonly value: number;
  readonly slope: number;
}

function boundAtPrice(corners: Corners, price: number): Point {
  const { cost, gain, plainEnds, ends, capacity } = corners;
  /** By group: what it loses by counting, and what it costs more. */
  const lost = new Float64Array(ends.length).fill(Number.POSITIVE_INFINITY);
  const paid = new Float64Array(ends.length);
  let value = price * capacity;
  let slope = capacity;
  let start = 0;
  for (let place = 0; place < ends.length; place += 1) {
    const plainEnd = plainEnds[place] ?? 0;
    const end = ends[place] ?? 0;
    const plain = bestCorner(corners, start, plainEnd, price);
    const worth = (gain[plain] ?? 0) - price * (cost[plain] ?? 0);
    value += worth;
    slope -= cost[plain] ?? 0;
    if (end > plainEnd) {
      const counted = bestCorner(corners, plainEnd, end, price);
      lost[place] = worth - (gain[counted] ?? 0) + price * (cost[counted] ?? 0);
      paid[place] = (cost[counted] ?? 0) - (cost[plain] ?? 0);
    }
    start = end;
  }
  const counting = leastLost(lost, paid, corners.wanted);
  return {
    price,
    bonus: counting.bonus,
    value: value - counting.lost,
    slope: slope - counting.paid,
  };
}

function bestCorner({ cost, gain }: Corners, start: number, end: number, price: number): number {
  let best = start;
  let most = Number.NEGATIVE_INFINITY;
  for (let at = start; at < end; at += 1) {
    const worth = (gain[at] ?? 0) - price * (cost[at] ?? 0);
    if (worth <= most) continue;
    most = worth;
    best = at;
  }
  return best;
}

/** What the wanted number of groups that lose least lose and pay; of equal ones each in part. */
function leastLost(lost: Float64Array, paid: Float64Array, wanted: number) {
  if (wanted === 0) return { lost: 0, paid: 0, bonus: 0 };
  const sorted = lost.toSorted();
  const last = sorted[wanted - 1] ?? 0;
  const next = sorted[wanted] ?? last;
  const all = {
    lost: 0,
    paid: 0,
    bonus: next < Number.POSITIVE_INFINITY ? (last + next) / 2 : last,
  };
  let left = wanted;
  let ties = 0;
  let tiesPaid = 0;
  for (let place = 0; place < lost.length; place += 1) {
    const loses = lost[place] ?? 0;
    if (loses === last) {
      ties += 1;
      tiesPaid += paid[place] ?? 0;
    } else if (loses < last) {
      left -= 1;
      all.lost += loses;
      all.paid += paid[place] ?? 0;
    }
  }
  all.lost += left * last;
  all.paid += (left * tiesPaid) / ties;
  return all;
}

export interface Bound {
  /** No answer gains more in which so many count. */
  readonly bound: number;
  /** How much lower the bound is once an option is taken: of all groups, one after the other. */
  readonly losses: Float64Array;
  /** How far rounding may have moved the bound. */
  readonly blur: number;
}

export function boundAt(problem: PricedProblem, { price, bonus }: Prices): Bound {
  let bound = price * problem.capacity - bonus * problem.count;
  const losses = new Float64Array(problem.groups.reduce((all, group) => all + group.length, 0));
  let start = 0;
  for (const group of problem.groups) {
    let best = Number.NEGATIVE_INFINITY;
    let at = start;
    for (const { cost, gain, count } of group) {
      const worth = gain + bonus * count - price * cost;
      if (worth > best) best = worth;
      losses[at] = worth;
      at += 1;
    }
    bound += best;
    for (; start < at; start += 1) losses[start] = best - (losses[start] ?? 0);
  }
  const largest =
    price * problem.capacity + Math.abs(bonus) * problem.groups.length + Math.abs(bound);
  return { bound, losses, blur: NEAR + ROUNDING * largest };
}

/** The options that lose no more than what is to spare; `losses` are of all groups in a row. */
export function cheapOptions(
  groups: readonly (readonly PricedOption[])[],
  losses: Float64Array,
  spare: number,
): CheapOption[][] {
  let at = 0;
  return groups.map((group) => {
    const cheap: CheapOption[] = [];
    for (const option of group) {
      const loss = losses[at] ?? 0;
      if (loss <= spare) cheap.push({ ...option, loss });
      at += 1;
    }
    return cheap;
  });
}

/**
 * The lowest point of a convex, piecewise straight function of what is above 0: once a place is
 * known on either side, where the straight pieces there meet is looked at next (Kelley's cutting
 * planes on a line).
 */
function lowestPoint(of: (at: number) => Point, start: number): Point {
  let left = of(0);
  let right = left;
  for (let at = start; right.slope < 0; at *= 2) {
    assert(at < Number.POSITIVE_INFINITY, 'as many as must can count within the capacity');
    left = right;
    right = of(at);
  }
  for (let turn = 0; turn < TURNS && left.slope < 0; turn += 1) {
    const drop = left.value - right.value - left.slope * (left.price - right.price);
    const meet = right.price + drop / (right.slope - left.slope);
    const isBetween = meet > left.price && meet < right.price;
    const point = of(isBetween ? meet : (left.price + right.price) / 2);
    const floor = left.value + left.slope * (point.price - left.price);
    if (point.slope <= 0) left = point;
    else right = point;
    if (point.value - floor <= NEAR_ENOUGH) break;
  }
  return left.value < right.value ? left : right;
}

const TURNS = 60;
/** In gains, which are whole: nearer to the lowest point the bound rules out hardly more. */
const NEAR_ENOUGH = 0.5;
/** Of whole gains: what is left out for being worse is worse by more than this. */
const NEAR = 0.01;
/** Sums of a few hundred numbers in floating point stay nearer than this part of the largest. */
const ROUNDING = 1e-13;
