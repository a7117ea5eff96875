/** Odds closer than this part of them differ only in the order in which they were added up. */
const SAME = 1e-9;

/** How many of a list have the same odds as each of it, itself among them. */
export function tiesOf(explanations: readonly { readonly odds: number }[]): number[] {
  return explanations.map(
    ({ odds }) => explanations.filter((other) => isSame(other.odds, odds)).length,
  );
}

/** So many from the first on that a tie is not cut in two; the list is best first. */
export function withTies(
  explanations: readonly { readonly odds: number }[],
  count: number,
): number {
  const last = explanations[count - 1];
  if (last === undefined) return explanations.length;
  const end = explanations.findIndex(({ odds }, at) => at >= count && !isSame(odds, last.odds));
  return end < 0 ? explanations.length : end;
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME * Math.max(one, other);
}
