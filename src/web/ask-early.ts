import type { BooksAnswer } from '../contract/api.ts';
import { routes } from '../contract/api.ts';
import { wasBookChosen } from './chosen-book.ts';
import { requestOf } from './request-of.ts';

/**
 * Asks the server for what the app will want first, while the app's own script is still on its way:
 * on a slow line that is most of the wait. This file comes in a chunk of its own, before all others
 * (vite.config.ts), so it uses next to nothing.
 */
const asked = new Map<string, ReturnType<Fetching>>();

void askFirst().catch(() => undefined);
warmUp();

/** The part of `fetch` that the app uses. */
export type Fetching = (path: string, init: RequestInit) => Promise<Answered>;
type Answered = Pick<Response, 'ok' | 'status' | 'json'>;

/** Gives each answer that was asked for early once; everything else is asked for now. */
export const fetchOrAsked: Fetching = (path, init) => {
  const early = asked.get(path);
  asked.delete(path);
  return early ?? fetch(path, init);
};

async function askFirst(): Promise<void> {
  const key = new URLSearchParams(location.hash.slice(1)).get('key');
  if (key !== null) {
    const answer = fetch(routes.session, requestOf({ key }));
    asked.set(routes.session, answer);
    await answer;
  }
  // A device that had a book open keeps it, and reads on from where it was.
  const books = wasBookChosen() ? fetch(routes.books, requestOf()) : booksAndRecords();
  asked.set(routes.books, books);
  await books;
}

/** The books, once the records that came along have been laid ready for who asks for them next. */
async function booksAndRecords(): Promise<Answered> {
  const answer = await fetch(`${routes.books}?with=records`, requestOf());
  if (!answer.ok) return answer;
  const { records, ...shelf }: BooksAnswer = await answer.json();
  const [only] = shelf.books;
  if (only !== undefined && records !== undefined) {
    const path = `${routes.records(only.group, only.season)}?after=0`;
    asked.set(path, Promise.resolve(answered(records)));
  }
  return answered(shelf);
}

/** What was read already: a season takes an old phone a while to read. */
function answered(body: unknown): Answered {
  return { ok: true, status: 200, json: async () => body };
}

/** The first use of each takes an old phone a moment: better now than when figures are drawn. */
function warmUp(): void {
  const tag = navigator.language;
  new Intl.NumberFormat(tag).format(0);
  new Intl.DateTimeFormat(tag, { month: 'short', timeZone: 'UTC' }).format(0);
  new Intl.ListFormat(tag).format([]);
  new Intl.PluralRules(tag).select(0);
}
