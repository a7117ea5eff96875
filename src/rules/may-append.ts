import { canonicalText } from '../base/canonical-text.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, claimedBy } from '../records/record.ts';
import type { Circumstances } from './circumstances.ts';
import { type ClaimFault, claimFault } from './claims.ts';
import { amountRefusal, namesRefusal } from './names-known.ts';
import { type Refusal, type RefusalName, refusal } from './refusals.ts';
import { closingRefusal, lateRefusal } from './season-open.ts';
import { inUseRefusal } from './still-in-use.ts';

/** One step of the ladder; undefined lets the record pass on to the next. */
type Rule = (
  ledger: Ledger,
  record: BookRecord,
  circumstances: Circumstances,
) => Refusal | undefined;

/** In order: the first that refuses is the one to say, since the later ones rest on it. */
const ladder: readonly Rule[] = Object.freeze([
  lateRefusal,
  claimRefusal,
  namesRefusal,
  inUseRefusal,
  amountRefusal,
  closingRefusal,
]);

/**
 * May this record be added to the book as it is now? A refusal changes nothing. Several records go
 * one after another, each against a ledger that already has those before it.
 */
export function mayAppend(
  ledger: Ledger,
  record: BookRecord,
  circumstances: Circumstances,
): Refusal | undefined {
  const known = ledger.standing.get(record.id);
  if (known !== undefined) return sameAgain(known, record);
  for (const rule of ladder) {
    const found = rule(ledger, record, circumstances);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A record that is here word for word was accepted before: sending it again is no mistake. */
function sameAgain(known: BookRecord, record: BookRecord): Refusal | undefined {
  if (canonicalText(known) === canonicalText(record)) return undefined;
  const message = `The book already has another record with the id ${record.id}; tell the manager.`;
  return refusal(record, 'id_taken_by_other_content', 'id', message);
}

const NOT_HERE = 'is not in the book; bring the book up to date and try again.';

const claims: Readonly<Record<ClaimFault, readonly [RefusalName, string]>> = {
  unknown: ['replaced_record_is_not_here', `The record that this one replaces ${NOT_HERE}`],
  itself_or_in_a_ring: [
    'record_claims_itself',
    'A record cannot replace or remove itself; write a new one.',
  ],
  removal_replaced: [
    'removal_cannot_be_replaced',
    'A removal cannot be edited; remove the removal, or write the record anew.',
  ],
  another_kind: [
    'replaced_by_another_kind',
    'An edit is of the same kind of set-up, or a movement for a movement; ' +
      'remove the old record and write a new one.',
  ],
  too_many_removals: [
    'too_many_removals_of_removals',
    'This removes a removal of a removal too many times over; write the record anew.',
  ],
};

function claimRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  const fault = claimFault(record, (id) => ledger.standing.get(id));
  if (fault === undefined) return undefined;
  if (fault === 'unknown' && record.kind === 'void') {
    const message = `The record ${claimedBy(record)} ${NOT_HERE}`;
    return refusal(record, 'removed_record_is_not_here', 'voids', message);
  }
  const [name, message] = claims[fault];
  return refusal(record, name, record.kind === 'void' ? 'voids' : 'replaces', message);
}
