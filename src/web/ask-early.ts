import type { BooksAnswer } from '../contract/api.ts';
import { routes } from '../contract/api.ts';
import { chosenBook, wasBookChosen } from './chosen-book.ts';
import { requestOf } from './request-of.ts';

/**
 * Asks the server for what the app will want first, while the app's own script is still on its way:
 * on a slow line that is most of the wait. This file comes in a chunk of its own, before all others
 * (vite.config.ts), so it uses next to nothing.
 */
const asked = new Map<string, Promise<Response>>();

void askFirst().catch(() => undefined);
warmUp();

/** Gives each answer that was asked for early once; everything else is asked for now. */
export const fetchOrAsked: typeof fetch = (input, init) => {
  const path = String(input);
  const early = asked.get(path);
  asked.delete(path);
  return early ?? fetch(input, init);
};

async function askFirst(): Promise<void> {
  const key = new URLSearchParams(location.hash.slice(1)).get('key');
  if (key !== null) await ask(routes.session, { key });
  const answer = await ask(routes.books);
  // A device that had a book open keeps it, and reads on from where it was.
  if (wasBookChosen() || !answer.ok) return;
  const { books }: BooksAnswer = await answer.json();
  const meant = chosenBook(books);
  if (meant !== undefined) await ask(`${routes.records(meant.group, meant.season)}?after=0`);
}

/** @returns a copy: the app reads the answer itself */
async function ask(path: string, body?: unknown): Promise<Response> {
  const answer = fetch(path, requestOf(body));
  asked.set(path, answer);
  return (await answer).clone();
}

/** The first use of each takes an old phone a moment: better now than when figures are drawn. */
function warmUp(): void {
  const tag = navigator.language;
  new Intl.NumberFormat(tag).format(0);
  new Intl.DateTimeFormat(tag, { month: 'short', timeZone: 'UTC' }).format(0);
  new Intl.ListFormat(tag).format([]);
  new Intl.PluralRules(tag).select(0);
}
