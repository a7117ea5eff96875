import { IdTable } from '../base/id-table.ts';
import { byText } from '../base/order.ts';
import type { Claims, JoinedParts } from '../intake/quick/joined-parts.ts';
import { Standing } from '../ledger/standing.ts';
import type { Claimant } from '../records/record.ts';
import { ClaimChains } from './claim-chains.ts';
import { claimFault, kindsFault } from './claims.ts';

/** Which records of a quickly read book count, by their places in it. */
export interface CountingPlaces {
  readonly overruled: ReadonlySet<number>;
  /** The place of the record that counts for the one at a place, or REMOVED. */
  currentOf(place: number): number;
}

/** The place of a record that was removed. */
export const REMOVED = -1;

/**
 * Which records of a book count. The rule is Standing's. Where no removal is itself claimed it
 * comes down to this: of several claims on one record the later one counts. So nearly all claims
 * are decided here, by places and without ids; what hangs together with a claim on a removal is
 * left to Standing.
 *
 * @returns undefined where a claim does not fit what it claims
 */
export function quickClaims(book: JoinedParts): CountingPlaces | undefined {
  const claims = book.claims();
  const chains = claimsFit(book, claims) ? ClaimChains.of(claims.from, claims.to) : undefined;
  if (chains === undefined) return undefined;
  const tangled = new Set<number>();
  for (const [claim, place] of claims.to.entries()) {
    if (book.kindAt(place) === 'void') tangled.add(chains.rootOfClaim(claim));
  }
  const isTangled = (claim: number) => tangled.has(chains.rootOfClaim(claim));
  const others = standingClaims(book, claims, chains.inOrder.filter(isTangled));
  if (others === undefined) return undefined;
  const plain = plainClaims(
    book,
    claims,
    chains.inOrder.filter((claim) => !isTangled(claim)),
  );
  for (const place of others.overruled) plain.overruled.add(place);
  return {
    overruled: plain.overruled,
    currentOf: (place) => {
      const root = chains.rootOf(place);
      return tangled.has(root) ? others.currentOf(place) : plain.currentOf(root);
    },
  };
}

/** True where what is claimed is always there, and of a kind that fits. */
function claimsFit(book: JoinedParts, { from, to }: Claims): boolean {
  return from.every((place, claim) => {
    const [kind, claimed] = [book.kindAt(place), book.kindAt(to[claim] ?? REMOVED)];
    if (kind === undefined || claimed === undefined) return false;
    return kindsFault(kind, claimed) === undefined;
  });
}

/**
 * Claims that are all in force.
 * @param plain their numbers, none before the one that it is on
 */
function plainClaims(
  book: JoinedParts,
  { from, to, written }: Claims,
  plain: Int32Array,
): CountingPlaces & { readonly overruled: Set<number> } {
  const isLater = (a: number, b: number) =>
    (byText(written[a] ?? '', written[b] ?? '') ||
      // Of claims that were written in one moment the one with the later id counts.
      byText(book.idAt(from[a] ?? 0), book.idAt(from[b] ?? 0))) > 0;
  const winners = new Map<number, number>();
  for (const claim of plain) {
    const place = to[claim] ?? 0;
    const other = winners.get(place);
    if (other === undefined || isLater(claim, other)) winners.set(place, claim);
  }
  const lost = new Set<number>();
  for (const claim of plain) {
    const claimed = to[claim] ?? 0;
    // What stands for a claim that lost does not count either.
    if (winners.get(claimed) !== claim || lost.has(claimed)) lost.add(from[claim] ?? 0);
  }
  const overruled = new Set(winners.keys());
  for (const place of lost) overruled.add(place);
  return {
    overruled,
    currentOf: (root) => {
      let current = root;
      for (let winner = winners.get(current); winner !== undefined; ) {
        current = from[winner] ?? 0;
        if (book.kindAt(current) === 'void') return REMOVED;
        winner = winners.get(current);
      }
      return current;
    },
  };
}

/** What Standing says of claims; undefined where one does not fit what it claims. */
function standingClaims(
  book: JoinedParts,
  claims: Claims,
  tangled: Int32Array,
): CountingPlaces | undefined {
  const claiming = Array.from(tangled, (claim) => claimantOf(book, claims, claim));
  const claimants = [...claiming];
  const places = new IdTable();
  for (const { id } of claimants) places.add(id);
  for (const claim of tangled) {
    const place = claims.to[claim] ?? 0;
    const id = book.idAt(place);
    // When it was written only matters of a claim, and a claim is in the list already.
    if (places.add(id) !== undefined) {
      claimants.push({ id, at: '', kind: book.kindAt(place) ?? 'void' });
    }
  }
  const standing = new Standing<Claimant>(claimants, places);
  const get = (id: string) => standing.get(id);
  if (claiming.some((claim) => claimFault(claim, get) !== undefined)) return undefined;
  return {
    overruled: new Set(Array.from(standing.overruled(), ({ id }) => book.placeOf(id))),
    currentOf: (place) => book.placeOf(standing.currentOf(book.idAt(place))?.id ?? ''),
  };
}

function claimantOf(book: JoinedParts, { from, to, written }: Claims, claim: number): Claimant {
  const place = from[claim] ?? 0;
  const record = {
    id: book.idAt(place),
    at: written[claim] ?? '',
    kind: book.kindAt(place) ?? 'void',
  };
  const claimed = book.idAt(to[claim] ?? 0);
  return record.kind === 'void' ? { ...record, voids: claimed } : { ...record, replaces: claimed };
}
