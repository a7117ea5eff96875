import { IdTable } from '../base/id-table.ts';
import { type BookRecord, byWritten, type Claimant, claimedBy } from '../records/record.ts';

/**
 * Which records count. An edit stands for the record it replaces; a removal takes one away; where
 * two claim the same record the later by (`at`, `id`) counts and the other is kept as a conflict.
 *
 * Two readings are chosen here (see DECISIONS.md): an edit stays in force when it is itself edited
 * or removed (so removing an edited record does not bring the old one back), while a removal that
 * is itself removed takes nothing away any more.
 */
export class Standing<R extends Claimant = BookRecord> {
  readonly #records: R[];
  /** Place in `#records` by id. */
  readonly #places: IdTable;
  readonly #claimsOn = new Map<string, R[]>();
  #overruled: ReadonlySet<R> | undefined;

  /** @param places the place of each of `records` by its id, all ids distinct */
  constructor(records: R[] = [], places: IdTable = new IdTable()) {
    this.#records = records;
    this.#places = places;
    for (const record of records) this.#noteClaim(record);
  }

  get size(): number {
    return this.#records.length;
  }

  get(id: string): R | undefined {
    const place = this.#places.placeOf(id);
    return place === undefined ? undefined : this.#records[place];
  }

  /** Every record, counting or not, in the order they were added. */
  records(): readonly R[] {
    return this.#records;
  }

  /** False where the id is already there: nothing changed. */
  add(record: R): boolean {
    if (this.#places.add(record.id) === undefined) return false;
    this.#records.push(record);
    this.#noteClaim(record);
    return true;
  }

  /**
   * True where nothing in force stands for the record or removes it, and it lost no conflict: nor
   * did any record that it stands for, back to the first writing.
   */
  counts(record: R): boolean {
    if (this.#claimsOn.size === 0) return true;
    if (this.#winnerOn(record.id) !== undefined) return false;
    // Each step goes to the one record that this one won, so the way back cannot run in a ring.
    for (let claim = record; ; ) {
      const target = claimedBy(claim);
      if (target === undefined) return true;
      if (this.#winnerOn(target) !== claim) return false;
      const before = this.get(target);
      if (before === undefined) return true;
      claim = before;
    }
  }

  /**
   * The records that do not count, as the very objects that were added. In a large book few records
   * claim or are claimed: asking this of each record is much quicker than `counts`.
   */
  overruled(): ReadonlySet<R> {
    this.#overruled ??= this.#findOverruled();
    return this.#overruled;
  }

  /**
   * The record that counts for the thing that an id once named, after all its edits and conflicts;
   * undefined once it was removed.
   */
  currentOf(id: string): R | undefined {
    const seen = new Set<string>();
    let first = this.get(id);
    for (let before = first; before !== undefined && !seen.has(before.id); ) {
      first = before;
      seen.add(before.id);
      before = this.get(claimedBy(before) ?? '');
    }
    return first === undefined ? undefined : this.#lastWord(first);
  }

  /** The record that took this one's place, by edit or removal; undefined while it stands. */
  supersededBy(id: string): R | undefined {
    return this.#winnerOn(id);
  }

  /** Claims on one record that lost to a later one and that nobody has settled by removing them. */
  conflicts(): { readonly on: string; readonly counts: R; readonly kept: R[] }[] {
    const found = [];
    for (const [on, claims] of this.#claimsOn) {
      const counts = claims.length > 1 ? this.#winnerOn(on) : undefined;
      if (counts === undefined) continue;
      const kept = claims.filter((claim) => claim !== counts && this.#isUnsettled(claim));
      if (kept.length > 0) found.push({ on, counts, kept: kept.sort(byWritten) });
    }
    return found;
  }

  /** Every id whose standing may change when this record arrives. */
  touchedBy(record: R): Set<string> {
    const touched = new Set<string>();
    const queue = [record.id];
    for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
      if (touched.has(id)) continue;
      touched.add(id);
      const target = id === record.id ? claimedBy(record) : this.#targetOf(id);
      if (target !== undefined) {
        queue.push(target);
        for (const claim of this.#claimsOn.get(target) ?? []) queue.push(claim.id);
      }
      for (const claim of this.#claimsOn.get(id) ?? []) queue.push(claim.id);
    }
    return touched;
  }

  #findOverruled(): Set<R> {
    const overruled = new Set<R>();
    for (const [id, claims] of this.#claimsOn) {
      const target = this.get(id);
      for (const record of target === undefined ? claims : [target, ...claims]) {
        if (!this.counts(record)) overruled.add(record);
      }
    }
    return overruled;
  }

  #noteClaim(record: R): void {
    this.#overruled = undefined;
    const target = claimedBy(record);
    if (target === undefined) return;
    const claims = this.#claimsOn.get(target);
    if (claims === undefined) this.#claimsOn.set(target, [record]);
    else claims.push(record);
  }

  #targetOf(id: string): string | undefined {
    const record = this.get(id);
    return record === undefined ? undefined : claimedBy(record);
  }

  /** A losing claim waits to be settled until it, or what was made of it, is removed. */
  #isUnsettled(claim: R): boolean {
    return claim.kind === 'void' ? this.#inForce(claim) : this.#lastWord(claim) !== undefined;
  }

  /** Down from a record through the claim that counts each time; undefined at a removal. */
  #lastWord(record: R): R | undefined {
    const seen = new Set<string>();
    let current = record;
    while (!seen.has(current.id)) {
      seen.add(current.id);
      const next = this.#winnerOn(current.id);
      if (next === undefined) return current;
      if (next.kind === 'void') return undefined;
      current = next;
    }
    return undefined;
  }

  /** The claim in force that counts on a record. */
  #winnerOn(id: string, path?: ReadonlySet<string>): R | undefined {
    const claims = this.#claimsOn.get(id);
    if (claims === undefined) return undefined;
    let winner: R | undefined;
    for (const claim of claims) {
      if (!this.#inForce(claim, path)) continue;
      if (winner === undefined || byWritten(winner, claim) < 0) winner = claim;
    }
    return winner;
  }

  /** A removal stays in force unless it was itself removed; an edit always does. */
  #inForce(claim: R, path?: ReadonlySet<string>): boolean {
    if (claim.kind !== 'void' || !this.#claimsOn.has(claim.id)) return true;
    // Removals that remove each other in a ring cannot be made by hand; all of them stay in force.
    if (path?.has(claim.id)) return true;
    const winner = this.#winnerOn(claim.id, new Set(path).add(claim.id));
    return winner === undefined;
  }
}
