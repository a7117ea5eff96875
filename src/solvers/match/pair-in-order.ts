/**
 * Pairs two sorted lists of points on a line: as many pairs as can be, no pair farther apart than
 * allowed, and then the least distance in all. Two pairs never need to cross, so one pass over a
 * table of both lists is exact (sequence alignment; Needleman and Wunsch, J. Mol. Biol. 48, 1970).
 *
 * @param before how far the second of a pair may lie before the first; @param after how far behind
 * @returns places in both lists, in order; ties: the earliest of both
 */
export function pairInOrder(
  firsts: readonly number[],
  seconds: readonly number[],
  before: number,
  after: number,
): (readonly [number, number])[] {
  const width = seconds.length + 1;
  // By places from the end: what the rest costs, a pair being worth more than any way.
  const cost = new Float64Array((firsts.length + 1) * width);
  const worth = (before + after + 1) * (firsts.length + seconds.length + 1);
  const pairCost = (a: number, b: number) => {
    const apart = (seconds[b] ?? 0) - (firsts[a] ?? 0);
    return apart < -before || apart > after ? Number.POSITIVE_INFINITY : Math.abs(apart) - worth;
  };
  const at = (a: number, b: number) => cost[a * width + b] ?? 0;
  for (let a = firsts.length - 1; a >= 0; a -= 1) {
    for (let b = seconds.length - 1; b >= 0; b -= 1) {
      const paired = pairCost(a, b) + at(a + 1, b + 1);
      cost[a * width + b] = Math.min(paired, at(a + 1, b), at(a, b + 1));
    }
  }
  const pairs: (readonly [number, number])[] = [];
  for (let a = 0, b = 0; a < firsts.length && b < seconds.length; ) {
    const best = at(a, b);
    if (pairCost(a, b) + at(a + 1, b + 1) === best) {
      pairs.push([a, b]);
      a += 1;
      b += 1;
    } else if (at(a + 1, b) === best) a += 1;
    else b += 1;
  }
  return pairs;
}
