import { canonicalText } from '../base/canonical-text.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { BookRecord } from '../records/record.ts';
import type { AppendRefusal } from './journal.ts';

/** What an append comes to before anything is written; the same for every engine. */
export interface AppendPlan {
  /** New records with their canonical text, in the order they were given, each id once. */
  readonly fresh: readonly { readonly record: BookRecord; readonly text: string }[];
  readonly already: readonly string[];
}

/**
 * Sorts records into new ones and ones that are kept word for word. One id that stands for other
 * content, in the book or within the append itself, refuses the whole append by name.
 *
 * @param keptText the canonical text that the book keeps under an id, if it has one
 */
export function planAppend(
  records: readonly BookRecord[],
  keptText: (id: string) => string | undefined,
): Outcome<AppendPlan, AppendRefusal> {
  const fresh = new Map<string, { record: BookRecord; text: string }>();
  const already = new Set<string>();
  const other = new Set<string>();
  for (const record of records) {
    const text = canonicalText(record);
    const kept = fresh.get(record.id)?.text ?? keptText(record.id);
    if (kept === undefined) fresh.set(record.id, { record, text });
    else if (kept !== text) other.add(record.id);
    else if (!fresh.has(record.id)) already.add(record.id);
  }
  if (other.size > 0) return refused({ name: 'same_id_with_other_content', ids: [...other] });
  return done({ fresh: [...fresh.values()], already: [...already] });
}

/** A record back from the canonical text that an engine keeps; it was checked when it came in. */
export function recordFrom(text: string): BookRecord {
  return JSON.parse(text) as BookRecord;
}
