import type { ErrorAnswer } from '../contract/api.ts';

/**
 * Refusals that say nothing about what was sent: the way to the server, the session, the server's
 * disk, a bug. What was sent then waits and is sent again; any other refusal is about the records,
 * which would be refused again.
 */
const NOT_ABOUT_RECORDS: ReadonlySet<string> = new Set([
  'no_answer',
  'not_signed_in',
  'key_not_valid',
  'foreign_host',
  'foreign_origin',
  'no_such_address',
  'no_such_book',
  'method_not_allowed',
  'store_is_full',
  'store_is_damaged',
  'program_error',
  'unknown_error',
]);

export function isAboutRecords(refusal: ErrorAnswer): boolean {
  return !NOT_ABOUT_RECORDS.has(refusal.name);
}
