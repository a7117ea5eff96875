/** Odds closer than this differ only in the order in which they were added up. */
const SAME = 1e-9;

/** Of each explanation in a list, how many there have the same odds, itself among them. */
export function tiesOf(explanations: readonly { readonly odds: number }[]): number[] {
  return explanations.map(
    ({ odds }) =>
      explanations.filter((other) => Math.abs(other.odds - odds) <= SAME * Math.max(odds, 1e-300))
        .length,
  );
}
