import type { Finding } from '../intake/finding.ts';
import type { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';

/** Requests and answers between the app and the server. Money in minor units, goods in units. */

export const routes = {
  /** POST {key}: changes the one-time key of the printed address for a session cookie. */
  session: '/api/session',
  /** POST: ends the session, whose cookie opens nothing afterwards. */
  sessionEnd: '/api/session/end',
  /** GET ?with=records: BooksAnswer. POST NewBook: an empty or a demo book, answers its Header. */
  books: '/api/books',
  /** GET ?after=ARRIVAL&limit=RECORDS: RecordsAnswer. POST AppendRequest: AppendAnswer. */
  records: (group: string, season: string) => `/api/books/${group}/${season}/records`,
  /** GET: the book file (JSON Lines). POST: a book file's text to add, all of it or nothing. */
  file: (group: string, season: string) => `/api/books/${group}/${season}/file`,
  /** GET ?paper=a4|letter: a tagged PDF. `about` is a family, record or stall id where needed. */
  paper: (group: string, season: string, paper: string, about?: string) =>
    `/api/books/${group}/${season}/papers/${paper}${about === undefined ? '' : `/${about}`}.pdf`,
  description: '/api/openapi.json',
} as const;

export interface BooksAnswer {
  readonly books: readonly Header[];
  /** Names of damage found at start; while there is any, nothing is written. */
  readonly damage: readonly string[];
  /**
   * All records of the book, where they were asked for and there is one book alone: a slow line
   * then carries one question and one answer less.
   */
  readonly records?: RecordsAnswer;
}

export interface NewBook {
  readonly group: string;
  readonly season: string;
  readonly start: 'empty' | 'demo';
}

export interface RecordsAnswer {
  readonly records: readonly { readonly arrival: number; readonly record: BookRecord }[];
  readonly last: number;
}

export interface AppendRequest {
  readonly records: readonly BookRecord[];
}

export interface AppendAnswer {
  readonly added: readonly { readonly arrival: number; readonly id: string }[];
  readonly already: readonly string[];
}

/** Every answer that is not 2xx. `name` is stable, `message` is a line with what to do next. */
export interface ErrorAnswer {
  readonly name: string;
  readonly message: string;
  readonly findings?: readonly Finding[];
  /** For help with a bug: what the server wrote down under this number says what happened. */
  readonly reference?: string;
}
