import type { BookRecord, RecordOf } from '../records/record.ts';
import type { Finding } from './finding.ts';
import type { Place } from './schema-findings.ts';

/** What a record that fits its schema may still say that makes no sense in itself. */
export function senseFindings(record: BookRecord, place: Place): Finding[] {
  const tell = (severity: Finding['severity'], field: string, said: unknown, wanted: string) => [
    { ...place, field, said, wanted, severity },
  ];
  switch (record.kind) {
    case 'loss':
      return lossFault(record) ?? [];
    case 'season':
      return record.ends < record.starts
        ? tell('warning', 'ends', record.ends, `a day on or after its start, ${record.starts}`)
        : [];
    case 'stall':
      return record.ends < record.starts
        ? tell('warning', 'ends', record.ends, `a time on or after its start, ${record.starts}`)
        : [];
    case 'void':
      return record.replaces === undefined
        ? []
        : tell('error', 'replaces', record.replaces, 'nothing: a removal only names what it voids');
    default:
      return [];
  }

  function lossFault(loss: RecordOf<'loss'>): Finding[] | undefined {
    const isStock = loss.lines !== undefined;
    const isDebt = loss.seller !== undefined || loss.cents !== undefined;
    if (isStock && isDebt) {
      const field = loss.seller === undefined ? 'cents' : 'seller';
      const said = loss.seller ?? loss.cents;
      return tell('error', field, said, 'lines of stock, or a seller and cents, never both');
    }
    if (!isStock && !isDebt) {
      return tell('error', 'lines', undefined, 'lines of stock, or a seller and cents');
    }
    if (isStock) return undefined;
    if (loss.cents === undefined) {
      return tell('error', 'cents', undefined, 'whole minor units (cents) that are given up');
    }
    return loss.seller === undefined
      ? tell('error', 'seller', undefined, 'the seller whose debt is given up')
      : undefined;
  }
}

/** True for the few kinds that senseFindings has something to say about. */
export function mayLackSense(record: BookRecord): boolean {
  return (
    record.kind === 'loss' ||
    record.kind === 'season' ||
    record.kind === 'stall' ||
    record.kind === 'void'
  );
}
