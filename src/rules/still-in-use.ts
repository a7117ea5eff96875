import type { Ledger } from '../ledger/ledger.ts';
import { setupKey } from '../ledger/setup.ts';
import { type BookRecord, claimedBy, isSetup, type SetupRecord } from '../records/record.ts';
import { WORDS } from './named-things.ts';
import { eachNamed, type NamedThing } from './references.ts';
import { type Refusal, refusal } from './refusals.ts';

/** Set-up that other records rest on is not taken away from under them. */
export function inUseRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  const claimed = ledger.standing.get(claimedBy(record) ?? '');
  if (claimed === undefined || !isSetup(claimed)) return undefined;
  const thing = thingOf(claimed);
  if (thing === undefined || staysSetUp(ledger, claimed, record)) return undefined;
  const id = setupKey(claimed);
  const user = firstNaming(ledger, thing, id);
  if (user === undefined) return undefined;
  const what = `${WORDS[thing]} ${id}`;
  const message = `The ${what} is used by ${user.kind} ${user.id}; edit or remove that first.`;
  return refusal(record, 'still_in_use', record.kind === 'void' ? 'voids' : 'replaces', message);
}

function thingOf(record: SetupRecord): NamedThing | undefined {
  switch (record.kind) {
    case 'product':
    case 'seller':
    case 'family':
    case 'host':
    case 'neighbour':
    case 'stall':
    case 'level':
      return record.kind;
    default:
      return undefined;
  }
}

/** True where the same id is still set up afterwards, by the edit itself or by another record. */
function staysSetUp(ledger: Ledger, claimed: SetupRecord, claim: BookRecord): boolean {
  const key = setupKey(claimed);
  if (isSetup(claim) && setupKey(claim) === key) return true;
  return ledger.standing
    .records()
    .some(
      (other) =>
        other.id !== claimed.id &&
        other.kind === claimed.kind &&
        setupKey(other) === key &&
        ledger.standing.counts(other),
    );
}

function firstNaming(ledger: Ledger, thing: NamedThing, id: string): BookRecord | undefined {
  return ledger.standing.records().find((record) => {
    if (!ledger.standing.counts(record)) return false;
    let isNaming = false;
    eachNamed(record, (named, namedId) => {
      if (named === thing && namedId === id) isNaming = true;
    });
    return isNaming;
  });
}
