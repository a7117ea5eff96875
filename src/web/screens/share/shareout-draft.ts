import type { SharedOut } from '../../../questions/share/share-out.ts';
import type { Draft } from '../../book.ts';

/** The record of a share-out as it stands on a sheet; sellers who get nothing are left out. */
export function shareoutDraft(
  pool: string,
  date: string,
  shared: SharedOut,
  more: Pick<Draft<'shareout'>, 'basis' | 'late' | 'note'>,
): Draft<'shareout'> {
  const given = Object.entries(shared.lines).filter(([, lines]) => Object.keys(lines).length > 0);
  return { kind: 'shareout', date, pool, lines: Object.fromEntries(given), ...more };
}
