import type { ErrorAnswer } from '../contract/api.ts';
import type { Finding } from '../intake/finding.ts';

/**
 * Every way a request can fail that is not a bug, with its HTTP status: the one place where
 * refusals of the inner rooms meet numbers.
 */
const statusByName = {
  not_json: 400,
  nested_too_deep: 400,
  not_as_described: 400,
  key_not_valid: 401,
  not_signed_in: 401,
  foreign_host: 403,
  foreign_origin: 403,
  no_such_address: 404,
  no_such_book: 404,
  no_such_paper: 404,
  method_not_allowed: 405,
  book_exists: 409,
  other_book: 409,
  same_id_with_other_content: 409,
  against_the_rules: 409,
  too_large: 413,
  too_many_records: 413,
  wrong_content_type: 415,
  findings: 422,
  paper_not_made: 500,
  program_error: 500,
  store_is_damaged: 503,
  store_is_full: 507,
} as const;

export type ProblemName = keyof typeof statusByName;

export interface Problem {
  readonly status: (typeof statusByName)[ProblemName];
  readonly answer: ErrorAnswer;
}

/**
 * @param message one line: what is not right and what to do next
 * @param more `name` where a rule has a name of its own
 */
export function problem(
  name: ProblemName,
  message: string,
  more: {
    readonly name?: string;
    readonly findings?: readonly Finding[];
    readonly reference?: string;
  } = {},
): Problem {
  return { status: statusByName[name], answer: { name, message, ...more } };
}
