import { type BookRecord, claimedBy } from '../../records/record.ts';
import { type ClaimFault, claimFault, claimRings } from '../claims.ts';
import { about, type BookCheck } from './checked-book.ts';

const wanted: Readonly<Record<ClaimFault, string>> = {
  unknown: 'the id of a record of this book',
  itself_or_in_a_ring: 'a record that was written before; these replace or remove each other',
  removal_replaced: 'a record that is not a removal: remove the removal instead',
  another_kind: 'a record of the same kind, or for a movement any movement',
  too_many_removals: 'the record itself, not a removal of a removal of a removal',
};

/** What a record replaces or removes is there, and fits it. */
export const claimsFit: BookCheck = (book, findings) => {
  const get = (id: string) => book.ledger.standing.get(id);
  const claiming = book.records.filter((record) => claimedBy(record) !== undefined);
  const tell = (record: BookRecord, fault: ClaimFault) => {
    const field = record.kind === 'void' ? 'voids' : 'replaces';
    findings.add(about(book, record, 'error', field, claimedBy(record), wanted[fault]));
  };
  for (const record of claiming) {
    const fault = claimFault(record, get);
    if (fault !== undefined) tell(record, fault);
  }
  for (const record of claimRings(claiming, get)) tell(record, 'itself_or_in_a_ring');
};
