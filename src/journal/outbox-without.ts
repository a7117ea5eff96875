import { canonicalText } from '../base/canonical-text.ts';
import type { BookRecord } from '../records/record.ts';
import type { OutboxEntry } from './book-copy.ts';

/** An outbox after the server has shown that it has these ids; entries left empty are gone. */
export function outboxWithout(
  outbox: readonly OutboxEntry[],
  arrived: ReadonlySet<string>,
): readonly OutboxEntry[] {
  return outbox
    .map((entry) => ({ ...entry, ids: entry.ids.filter((id) => !arrived.has(id)) }))
    .filter(({ ids }) => ids.length > 0);
}

/**
 * Tells records of the server that fit what is here from those whose id stands for other content
 * here; `fresh` are those of whose id nothing is here at all.
 */
export function splitAside(
  records: readonly BookRecord[],
  here: (id: string) => BookRecord | undefined,
): { fitting: BookRecord[]; conflicting: BookRecord[]; fresh: BookRecord[] } {
  const split: ReturnType<typeof splitAside> = { fitting: [], conflicting: [], fresh: [] };
  for (const record of records) {
    const known = here(record.id);
    if (known === undefined) split.fresh.push(record);
    const fits = known === undefined || canonicalText(known) === canonicalText(record);
    (fits ? split.fitting : split.conflicting).push(record);
  }
  return split;
}
