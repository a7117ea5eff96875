import { QuickReader } from '../../intake/quick/quick-reader.ts';
import { joinParts } from '../../rules/quick-book.ts';
import { sumPart } from '../../rules/quick-part.ts';
import type { BalancedBook } from '../../rules/quick-sums.ts';
import type { Outlet } from './outlet.ts';
import type { FileParts } from './part-threads.ts';
import { readPieces } from './read-pieces.ts';

/**
 * Balances of a book file that several threads read together.
 *
 * @param parts they are ended
 * @param day balances at the end of this day; without it, after all that is recorded
 * @returns undefined where a part, or the book as a whole, is not surely fine: it is then to be
 * read and checked the slow way
 */
export async function balancesInParts(
  parts: FileParts,
  outlet: Pick<Outlet, 'progress'>,
  day: string | undefined,
): Promise<BalancedBook | undefined> {
  const book = await joinedBalances(parts, outlet, day);
  outlet.progress('');
  if (book === undefined) await parts.stop();
  else parts.done();
  return book;
}

async function joinedBalances(
  parts: FileParts,
  outlet: Pick<Outlet, 'progress'>,
  day: string | undefined,
): Promise<BalancedBook | undefined> {
  const { pieces } = parts;
  const reader = new QuickReader(parts.withNames, parts.expected);
  const own = await readPieces(reader, pieces, pieces.first(), () =>
    outlet.progress(`Reading ${Math.floor(pieces.share * 100)} %`),
  );
  const facts = allThere(await Promise.all(parts.others.map((other) => other.facts)));
  if (own === undefined || facts === undefined) return undefined;
  const book = joinParts(own, facts, day);
  const [plan, ...plans] = book?.plans ?? [];
  if (book === undefined || plan === undefined) return undefined;
  const answers = plans.map((each, part) => parts.others[part]?.sums(each));
  const sums = sumPart(own, plan);
  const others = allThere(await Promise.all(answers));
  return sums && others && book.balanced(sums, others);
}

function allThere<T>(list: readonly (T | undefined)[]): T[] | undefined {
  const there = list.filter((each) => each !== undefined);
  return there.length === list.length ? there : undefined;
}
