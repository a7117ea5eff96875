import type { BookRecord } from '../records/record.ts';
import type { NamedThing } from './references.ts';

/**
 * Why a record is not accepted now: a name that stays the same, and one plain sentence that says
 * what to do next. Each has an example with its exact words in mistakes/.
 */
export interface Refusal {
  readonly name: RefusalName;
  /** The id of the refused record. */
  readonly record: string;
  /** The path of the field that stands in the way. */
  readonly field: string;
  readonly message: string;
}

export type RefusalName =
  | 'id_taken_by_other_content'
  | 'replaced_record_is_not_here'
  | 'removed_record_is_not_here'
  | 'record_claims_itself'
  | 'removal_cannot_be_replaced'
  | 'replaced_by_another_kind'
  | 'too_many_removals_of_removals'
  | 'season_is_closed'
  | 'late_entry_needs_a_reason'
  | 'late_entry_is_dated_before_the_closing'
  | `unknown_${NamedThing}`
  | 'choice_is_not_offered'
  | 'payment_is_not_here'
  | 'debit_is_not_here'
  | 'still_in_use'
  | 'amount_is_too_large'
  | 'closing_does_not_replace_the_season'
  | 'season_is_not_ready'
  | 'closing_needs_a_reason'
  | 'closing_needs_a_second_person';

/** Names the refusal of a record. */
export function refusal(
  record: BookRecord,
  name: RefusalName,
  field: string,
  message: string,
): Refusal {
  return { name, record: record.id, field, message };
}
