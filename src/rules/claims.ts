import { type Claimant, claimedBy, isMovementKind, type Kind } from '../records/record.ts';

/** What is wrong with what a record replaces or voids. */
export type ClaimFault =
  | 'unknown'
  | 'itself_or_in_a_ring'
  | 'removal_replaced'
  | 'another_kind'
  | 'too_many_removals';

/** Removals of removals: nobody needs more, and a book must stay quick to add up. */
const REMOVALS_MAX = 8;

/** @param get the record of an id among all that are known, this one's own batch included */
export function claimFault(
  record: Claimant,
  get: (id: string) => Claimant | undefined,
): ClaimFault | undefined {
  const id = claimedBy(record);
  if (id === undefined) return undefined;
  if (id === record.id) return 'itself_or_in_a_ring';
  const claimed = get(id);
  if (claimed === undefined) return 'unknown';
  return record.kind === 'void' ? removalFault(record, get) : kindsFault(record.kind, claimed.kind);
}

/** What is wrong with the kinds of a record and of the one that it replaces or voids. */
export function kindsFault(kind: Kind, claimed: Kind): ClaimFault | undefined {
  if (kind === 'void') return undefined;
  if (claimed === 'void') return 'removal_replaced';
  const fits = isMovementKind(kind) ? isMovementKind(claimed) : claimed === kind;
  return fits ? undefined : 'another_kind';
}

function removalFault(
  removal: Claimant,
  get: (id: string) => Claimant | undefined,
): ClaimFault | undefined {
  let claimed: Claimant | undefined = removal;
  for (let depth = 0; depth < REMOVALS_MAX; depth += 1) {
    if (claimed?.kind !== 'void') return undefined;
    claimed = get(claimedBy(claimed) ?? '');
  }
  return claimed?.kind === 'void' ? 'too_many_removals' : undefined;
}

/**
 * The records among those given that claim each other in a ring, each ring told once by its first
 * record. Long chains of edits are walked once.
 */
export function claimRings<R extends Claimant>(
  records: Iterable<R>,
  get: (id: string) => R | undefined,
): R[] {
  const rings: R[] = [];
  const walked = new Set<string>();
  for (const record of records) {
    if (walked.has(record.id)) continue;
    const path = new Set<string>();
    let step: R | undefined = record;
    while (step !== undefined && !walked.has(step.id) && !path.has(step.id)) {
      path.add(step.id);
      step = get(claimedBy(step) ?? '');
    }
    if (step !== undefined && path.has(step.id) && path.size > 1) rings.push(step);
    for (const id of path) walked.add(id);
  }
  return rings;
}
