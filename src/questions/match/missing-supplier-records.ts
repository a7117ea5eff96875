import type { Ledger } from '../../ledger/ledger.ts';
import { priceOfLines } from '../../ledger/posting.ts';
import type { MovementRecord, RecordOf } from '../../records/record.ts';
import type { Drafted } from './missing-bank-records.ts';
import type { SupplierPaper } from './supplier-papers.ts';

type SupplierDraftKind =
  | 'delivery'
  | 'swap-in'
  | 'swap-out'
  | 'exchange'
  | 'debit'
  | 'debit-returned'
  | 'card-settle'
  | 'online'
  | 'gift'
  | 'settle';

/** A record as far as the statement tells it; what it does not tell, a person fills in. */
type SupplierDraft = {
  readonly [K in SupplierDraftKind]: Pick<RecordOf<K>, 'kind' | 'date'> & Partial<Drafted<K>>;
}[SupplierDraftKind];

export interface MissingSupplierRecord {
  readonly lines: readonly number[];
  readonly record: SupplierDraft;
}

/** Offers the record that is missing for each paper that only the supplier has. */
export function missingSupplierRecords(
  ledger: Ledger,
  papers: readonly SupplierPaper[],
): MissingSupplierRecord[] {
  return papers.flatMap((paper) => {
    const record = draftOf(ledger, paper);
    return record === undefined ? [] : [{ lines: paper.lines.map(({ line }) => line), record }];
  });
}

function draftOf(ledger: Ledger, paper: SupplierPaper): SupplierDraft | undefined {
  const { sort, date, goods: lines } = paper;
  const cents = paper.cents ?? 0;
  const slip = paper.reference === undefined ? {} : { slip: paper.reference };
  const order = paper.reference === undefined ? {} : { order: paper.reference };
  switch (sort) {
    case 'delivery':
      return { kind: sort, date, lines, ...slip };
    case 'swap-in':
    case 'swap-out': {
      const neighbour = paper.neighbour === undefined ? {} : { neighbour: paper.neighbour };
      return { kind: sort, date, lines, ...neighbour, ...slip };
    }
    case 'exchange':
      return { kind: sort, date, lines };
    case 'debit':
      return { kind: sort, date, cents };
    case 'debit-returned':
      return returnOf(ledger, date, cents);
    case 'card':
      return { kind: 'card-settle', date, cents, fee: 0, to: 'supplier' };
    case 'posted': {
      const paid = priceOfLines(lines, date, ledger);
      return { kind: 'online', date, lines, paid, sent: 'post', ...order };
    }
    case 'online':
      return { kind: 'online', date, lines, paid: cents, sent: 'hand', ...order };
    case 'gift':
      return { kind: sort, date, lines, from: 'supplier', ...order };
    case 'proceeds':
      return { kind: 'settle', date, proceeds: cents };
    case 'other':
      return undefined;
  }
}

function returnOf(ledger: Ledger, date: string, cents: number): SupplierDraft {
  const debit = ledger
    .movements()
    .findLast(
      (each: MovementRecord): each is RecordOf<'debit'> =>
        each.kind === 'debit' && each.cents === cents && each.date <= date,
    );
  return { kind: 'debit-returned', date, ...(debit === undefined ? {} : { debit: debit.id }) };
}
