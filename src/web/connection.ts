import { done, type Outcome, refused } from '../base/outcome.ts';
import {
  type AppendAnswer,
  type BooksAnswer,
  type ErrorAnswer,
  type NewBook,
  type RecordsAnswer,
  routes,
} from '../contract/api.ts';
import type { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';
import type { Fetching } from './ask-early.ts';
import { requestOf } from './request-of.ts';
import { say } from './say.ts';

/** The only place in the app that knows HTTP. What goes wrong comes back as a value. */

/**
 * A server's refusal, or `no_answer` where none came: what was sent may or may not have arrived.
 */
export type Answer<T> = Promise<Outcome<T, ErrorAnswer>>;

export interface BookAddress {
  readonly group: string;
  readonly season: string;
}

export interface Connection {
  openSession(key: string): Answer<unknown>;
  endSession(): Answer<unknown>;
  books(): Answer<BooksAnswer>;
  makeBook(book: NewBook): Answer<Header>;
  recordsAfter(book: BookAddress, arrival: number): Answer<RecordsAnswer>;
  append(book: BookAddress, records: readonly BookRecord[]): Answer<AppendAnswer>;
}

export const NO_ANSWER = 'no_answer';

export function httpConnection(fetching: Fetching): Connection {
  const send = <T>(path: string, body?: unknown) => request<T>(fetching, path, body);
  return {
    openSession: (key) => send(routes.session, { key }),
    endSession: () => send(routes.sessionEnd, {}),
    books: () => send<BooksAnswer>(routes.books),
    makeBook: (book) => send<Header>(routes.books, book),
    recordsAfter: ({ group, season }, arrival) =>
      send<RecordsAnswer>(`${routes.records(group, season)}?after=${arrival}`),
    append: ({ group, season }, records) =>
      send<AppendAnswer>(routes.records(group, season), { records }),
  };
}

async function request<T>(fetching: Fetching, path: string, body?: unknown): Answer<T> {
  try {
    const response = await fetching(path, requestOf(body));
    const answer: unknown = await response.json();
    // The server is our own and speaks the contract; its shapes are tested on its side.
    return response.ok ? done(answer as T) : refused(errorOf(answer, response.status));
  } catch {
    return refused({
      name: NO_ANSWER,
      message: say`The server did not answer. Nothing is lost: try again.`,
    });
  }
}

function errorOf(answer: unknown, status: number): ErrorAnswer {
  const known = typeof answer === 'object' && answer !== null && 'message' in answer;
  if (known) return answer as ErrorAnswer;
  return { name: 'unknown_error', message: say`The server answered ${status}. Try again.` };
}
