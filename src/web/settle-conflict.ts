import type { BookRecord } from '../records/record.ts';
import type { Draft } from './book.ts';
import { say } from './say.ts';
import { contentOf } from './undo.ts';

/**
 * Two people changed the same record apart from each other. A person chooses which one stands; the
 * drafts here write that choice down, so that on every device the same one counts.
 */
const REASON = say`Two versions of one record: the other one stands`;

/**
 * @param counts the claim that counts now, the later one
 * @param kept the claims that were kept aside
 * @param chosen the one of them all that shall stand
 */
export function settleDrafts(
  counts: BookRecord,
  kept: readonly BookRecord[],
  chosen: BookRecord,
): Draft[] {
  const others = kept.filter((claim) => claim !== chosen);
  const aside = others.map((claim) => removal(claim.id));
  if (chosen === counts) return aside;
  if (chosen.kind === 'void') return [removal(counts.id), removal(chosen.id), ...aside];
  // Taking a removal back puts the chosen edit in force, as nothing else stands in its way.
  if (counts.kind === 'void') return [removal(counts.id), ...aside];
  return [{ ...contentOf(chosen), replaces: counts.id }, removal(chosen.id), ...aside];
}

function removal(id: string): Draft {
  return { kind: 'void', voids: id, reason: REASON };
}
