import { IdTable } from '../base/id-table.ts';
import { instantText } from '../base/instant-number.ts';
import { NumberTable } from '../base/number-table.ts';
import type { Claims, JoinedParts } from '../intake/quick/joined-parts.ts';
import { Standing } from '../ledger/standing.ts';
import type { Claimant } from '../records/record.ts';
import { ClaimChains } from './claim-chains.ts';
import { claimFault, kindsFault } from './claims.ts';

/** Which records of a quickly read book count, by their places in it. */
export interface CountingPlaces {
  /** By place: 1 where the record does not count. */
  readonly overruled: Uint8Array;
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
  for (let claim = 0; claim < claims.to.length; claim += 1) {
    const isOnRemoval = book.kindAt(claims.to[claim] ?? REMOVED) === 'void';
    if (isOnRemoval) tangled.add(chains.rootOfClaim(claim));
  }
  const isTangled = (claim: number) => tangled.has(chains.rootOfClaim(claim));
  const others = standingClaims(book, claims, chains.inOrder.filter(isTangled));
  if (others === undefined) return undefined;
  const plain = plainClaims(
    book,
    claims,
    chains.inOrder.filter((claim) => !isTangled(claim)),
  );
  for (const place of others.overruled) plain.overruled[place] = 1;
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
  for (let claim = 0; claim < from.length; claim += 1) {
    const kind = book.kindAt(from[claim] ?? REMOVED);
    const claimed = book.kindAt(to[claim] ?? REMOVED);
    if (kind === undefined || claimed === undefined) return false;
    if (kindsFault(kind, claimed) !== undefined) return false;
  }
  return true;
}

/**
 * Claims that are all in force.
 * @param plain their numbers, none before the one that it is on
 */
function plainClaims(book: JoinedParts, claims: Claims, plain: Int32Array): CountingPlaces {
  const { from, to, written } = claims;
  const writing = (claim: number) => ({
    place: from[claim] ?? REMOVED,
    written: written[claim] ?? 0,
  });
  const winners = new NumberTable(plain.length);
  for (const claim of plain) {
    const place = to[claim] ?? 0;
    const other = winners.get(place);
    if (other < 0 || book.isLater(writing(claim), writing(other))) winners.set(place, claim);
  }
  const overruled = new Uint8Array(book.size);
  const lost = new Set<number>();
  for (const claim of plain) {
    const claimed = to[claim] ?? 0;
    overruled[claimed] = 1;
    // What stands for a claim that lost does not count either.
    if (winners.get(claimed) === claim && !lost.has(claimed)) continue;
    const place = from[claim] ?? 0;
    lost.add(place);
    overruled[place] = 1;
  }
  return {
    overruled,
    currentOf: (root) => {
      let current = root;
      for (let winner = winners.get(current); winner >= 0; winner = winners.get(current)) {
        current = from[winner] ?? 0;
        if (book.kindAt(current) === 'void') return REMOVED;
      }
      return current;
    },
  };
}

/** The few places that do not count where claims are on removals. */
interface TangledPlaces extends Pick<CountingPlaces, 'currentOf'> {
  readonly overruled: readonly number[];
}

/** What Standing says of claims; undefined where one does not fit what it claims. */
function standingClaims(
  book: JoinedParts,
  claims: Claims,
  tangled: Int32Array,
): TangledPlaces | undefined {
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
    overruled: Array.from(standing.overruled(), ({ id }) => book.placeOf(id)),
    currentOf: (place) => book.placeOf(standing.currentOf(book.idAt(place))?.id ?? ''),
  };
}

function claimantOf(book: JoinedParts, { from, to, written }: Claims, claim: number): Claimant {
  const place = from[claim] ?? 0;
  const record = {
    id: book.idAt(place),
    at: instantText(written[claim] ?? 0),
    kind: book.kindAt(place) ?? 'void',
  };
  const claimed = book.idAt(to[claim] ?? 0);
  return record.kind === 'void' ? { ...record, voids: claimed } : { ...record, replaces: claimed };
}
