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

export interface PricedProblem {
  /** In each group by rising cost; those that count come after those that do not. */
  readonly groups: readonly (readonly PricedOption[])[];
  readonly capacity: number;
  /** The least number of chosen options that count; it can be reached within the capacity. */
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
  const flat = flatOptions(problem);
  const atBonus = (bonus: number) => {
    const of = (price: number) => relaxed(flat, price, bonus);
    const end = dearest(flat, bonus);
    // At that price every group takes the option that costs nothing.
    const dear = end * flat.capacity - bonus * flat.wanted;
    const last = { value: dear, slope: flat.capacity, count: 0 };
    const { left, right } = lowestPoint(of, end, last);
    // Between the two answers that meet there lies the one that costs just the capacity.
    const width = right.point.slope - left.point.slope;
    const part = width > 0 ? clamped(right.point.slope / width) : 0;
    const count = part * left.point.count + (1 - part) * right.point.count;
    const [near] = [left, right].sort((a, b) => a.point.value - b.point.value);
    const value = near?.point.value ?? 0;
    return { value, slope: count - problem.count, price: near?.at ?? 0 };
  };
  let end = Math.max(1, ...flat.gain);
  while (atBonus(end).slope < -BARELY && end < highestBonus(problem)) end *= 4;
  const { left, right } = lowestPoint(atBonus, end);
  const best = left.point.value < right.point.value ? left : right;
  return { price: best.point.price, bonus: best.at };
}

/**
 * The options that are best in their group at some prices, one after the other, for the loops that
 * go through them again and again: the corners of the upper hull of gain over cost, of those that
 * count and of the others.
 */
interface FlatOptions {
  readonly cost: Float64Array;
  readonly gain: Float64Array;
  readonly count: Float64Array;
  /** Where each group ends. */
  readonly ends: Int32Array;
  readonly capacity: number;
  readonly wanted: number;
}

function flatOptions({ groups, capacity, count: wanted }: PricedProblem): FlatOptions {
  const size = groups.reduce((all, group) => all + group.length, 0);
  const cost = new Float64Array(size);
  const gain = new Float64Array(size);
  const count = new Float64Array(size);
  const ends = new Int32Array(groups.length);
  let end = 0;
  let place = 0;
  for (const group of groups) {
    let hull = end;
    let counted = 0;
    for (const option of group) {
      if (option.count !== counted) hull = end;
      counted = option.count;
      while (end - hull >= 2 && isUnderLine(cost, gain, end, option)) end -= 1;
      cost[end] = option.cost;
      gain[end] = option.gain;
      count[end] = option.count;
      end += 1;
    }
    ends[place] = end;
    place += 1;
  }
  const cut = (all: Float64Array) => all.subarray(0, end);
  return { cost: cut(cost), gain: cut(gain), count: cut(count), ends, capacity, wanted };
}

/** True where the last of the corners before an end lies on or under the line to the option. */
function isUnderLine(
  cost: Float64Array,
  gain: Float64Array,
  end: number,
  option: PricedOption,
): boolean {
  const [cost0 = 0, cost1 = 0] = [cost[end - 2], cost[end - 1]];
  const [gain0 = 0, gain1 = 0] = [gain[end - 2], gain[end - 1]];
  return (gain1 - gain0) * (option.cost - cost1) <= (option.gain - gain1) * (cost1 - cost0);
}

/** A price at which no option is worth its cost. */
function dearest({ cost, gain, count }: FlatOptions, bonus: number): number {
  let most = 1;
  for (let at = 0; at < cost.length; at += 1) {
    const units = cost[at] ?? 0;
    if (units > 0) most = Math.max(most, ((gain[at] ?? 0) + bonus * (count[at] ?? 0)) / units);
  }
  return most;
}

/** A bonus above it makes no option count that this one does not. */
function highestBonus({ groups, capacity }: PricedProblem): number {
  const gains = groups.map((group) => Math.max(...group.map(({ gain }) => gain)));
  return 4 * Math.max(1, ...gains) * (capacity + 1);
}

function clamped(part: number): number {
  return Math.min(1, Math.max(0, part));
}

export interface Bound {
  /** No answer gains more. */
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
  const largest = price * problem.capacity + bonus * problem.groups.length + Math.abs(bound);
  return { bound, losses, blur: NEAR + ROUNDING * largest };
}

/** The options that lose no more than what is to spare; `losses` are of all groups in a row. */
export function cheapOptions(
  groups: readonly (readonly PricedOption[])[],
  losses: Float64Array,
  spare: number,
): PricedOption[][] {
  let at = 0;
  return groups.map((group) => {
    const cheap: PricedOption[] = [];
    for (const option of group) {
      if ((losses[at] ?? 0) <= spare) cheap.push(option);
      at += 1;
    }
    return cheap;
  });
}

interface Point {
  readonly value: number;
  /** A slope of the function there. */
  readonly slope: number;
}

/**
 * The lowest point of a convex, piecewise straight function from 0 to an end: where the straight
 * pieces known on both sides meet is looked at next (Kelley's cutting planes on a line).
 */
function lowestPoint<P extends Point>(of: (at: number) => P, end: number, last?: P) {
  let left = { at: 0, point: of(0) };
  if (left.point.slope >= 0) return { left, right: left };
  let right = { at: end, point: last ?? of(end) };
  if (right.point.slope <= 0) return { left: right, right };
  for (let turn = 0; turn < TURNS; turn += 1) {
    const drop = left.point.value - right.point.value - left.point.slope * (left.at - right.at);
    const meet = right.at + drop / (right.point.slope - left.point.slope);
    const at = meet > left.at && meet < right.at ? meet : (left.at + right.at) / 2;
    const point = of(at);
    const floor = left.point.value + left.point.slope * (at - left.at);
    if (point.slope <= 0) left = { at, point };
    else right = { at, point };
    if (point.value - floor <= NEAR_ENOUGH) break;
  }
  return { left, right };
}

const TURNS = 60;
/** In gains, which are whole: nearer to the lowest point the bound rules out hardly more. */
const NEAR_ENOUGH = 0.5;
/** Of whole gains: what is left out for being worse is worse by more than this. */
const NEAR = 0.01;
/** Sums of a few hundred numbers in floating point stay nearer than this part of the largest. */
const ROUNDING = 1e-13;
/** Of counts: what rounding leaves of a slope that is 0. */
const BARELY = 1e-6;

/** The bound at two prices, and its slope towards a higher price of cost. */
function relaxed(flat: FlatOptions, price: number, bonus: number) {
  const { cost, gain, count, ends } = flat;
  let value = price * flat.capacity - bonus * flat.wanted;
  let costs = 0;
  let counts = 0;
  let at = 0;
  for (let group = 0; group < ends.length; group += 1) {
    const end = ends[group] ?? 0;
    let most = Number.NEGATIVE_INFINITY;
    let best = at;
    for (; at < end; at += 1) {
      const worth = (gain[at] ?? 0) + bonus * (count[at] ?? 0) - price * (cost[at] ?? 0);
      if (worth <= most) continue;
      most = worth;
      best = at;
    }
    value += most;
    costs += cost[best] ?? 0;
    counts += count[best] ?? 0;
  }
  return { value, slope: flat.capacity - costs, count: counts };
}
