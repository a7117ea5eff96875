import type { MovementRecord } from '../../records/record.ts';
import { type Edit, editsOf } from './edits.ts';
import type { Hypothesis } from './hypothesis.ts';
import { withNumber } from './number-fields.ts';

/**
 * The edits that put several mistakes right at once; undefined where not all can have been made.
 * Two mistakes in one record go together only where they are two of its numbers.
 */
export function editsOfAll(mistakes: readonly Hypothesis[]): Edit[] | undefined {
  const byRecord = new Map<MovementRecord, Hypothesis[]>();
  const edits: Edit[] = [];
  for (const mistake of mistakes) {
    if (mistake.record === undefined) edits.push(...editsOf(mistake));
    else byRecord.set(mistake.record, [...(byRecord.get(mistake.record) ?? []), mistake]);
  }
  for (const [record, together] of byRecord) {
    const own = together.length === 1 ? together[0] : merged(record, together);
    if (own === undefined) return undefined;
    edits.push(...editsOf(own));
  }
  return edits;
}

function merged(record: MovementRecord, together: readonly Hypothesis[]): Hypothesis | undefined {
  const [first] = together;
  if (first === undefined) return undefined;
  let becomes = record;
  const places = new Set<string>();
  for (const { field, to, becomes: other } of together) {
    if (field === undefined || to === undefined || other !== undefined) return undefined;
    places.add(`${field.part} ${field.seller} ${field.product}`);
    becomes = withNumber(becomes, field, to);
  }
  if (places.size < together.length) return undefined;
  return { sort: first.sort, chance: first.chance, record, becomes };
}
