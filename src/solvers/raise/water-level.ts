/**
 * The height of the lowest once whole units have gone, one by one, to whoever stood lowest.
 *
 * @param heights whole units, at least one; @param units whole units to give
 */
export function waterLevel(heights: readonly number[], units: number): number {
  const sorted = Float64Array.from(heights).sort();
  let level = sorted[0] ?? 0;
  let left = units;
  for (let below = 1; below <= sorted.length; below += 1) {
    const next = sorted[below] ?? Number.POSITIVE_INFINITY;
    const needed = (next - level) * below;
    if (needed > left) return level + Math.floor(left / below);
    left -= needed;
    level = next;
  }
  return level;
}
