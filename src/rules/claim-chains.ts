import { NumberTable } from '../base/number-table.ts';

/**
 * How claims hang together: each is on a record that may claim another one itself, and so on back
 * to a record that claims nothing, the root. Claims go by their numbers, records by their places.
 */
export class ClaimChains {
  /** Every claim, none before the one that it is on. */
  readonly inOrder: Int32Array;
  /** The claim that a record is, by its place. */
  readonly #claimOf: NumberTable;
  /** The root that each claim leads to. */
  readonly #roots: Int32Array;

  private constructor(claimOf: NumberTable, roots: Int32Array, order: Int32Array) {
    this.#claimOf = claimOf;
    this.#roots = roots;
    this.inOrder = order;
  }

  /**
   * @param from the places of the records that claim
   * @param to the places of those that they claim
   * @returns undefined where claims run in a ring
   */
  static of(from: Int32Array, to: Int32Array): ClaimChains | undefined {
    const claimOf = new NumberTable(from.length);
    for (let claim = 0; claim < from.length; claim += 1) claimOf.set(from[claim] ?? 0, claim);
    const roots = new Int32Array(from.length).fill(UNKNOWN);
    const order = new Int32Array(from.length);
    let ordered = 0;
    const path: number[] = [];
    for (let first = 0; first < from.length; first += 1) {
      let step = first;
      while (step >= 0 && roots[step] === UNKNOWN) {
        // Without a ring no way is longer than all claims.
        if (path.push(step) > from.length) return undefined;
        step = claimOf.get(to[step] ?? 0);
      }
      let root = step < 0 ? undefined : roots[step];
      for (let claim = path.pop(); claim !== undefined; claim = path.pop()) {
        root ??= to[claim];
        roots[claim] = root ?? UNKNOWN;
        order[ordered] = claim;
        ordered += 1;
      }
    }
    return new ClaimChains(claimOf, roots, order);
  }

  /** The root that a record's claims lead to; its own place where it claims nothing. */
  rootOf(place: number): number {
    const claim = this.#claimOf.get(place);
    return claim < 0 ? place : this.rootOfClaim(claim);
  }

  rootOfClaim(claim: number): number {
    return this.#roots[claim] ?? UNKNOWN;
  }
}

const UNKNOWN = -1;
