import type { BookAddress } from '../../connection.ts';

const ID_MAX = 48;

/** A short id (`a-z 0-9 -`) that looks like a name: `Wrenfield Young Rowers` is `wrenfield-young-rowers`. */
export function idLike(name: string, otherwise: string): string {
  const bare = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, ID_MAX)
    .replace(/^-+|-+$/g, '');
  return bare === '' ? otherwise : bare;
}

/** An address that no book has yet, made from a group's and a season's names. */
export function freeAddress(
  groupName: string,
  seasonName: string,
  books: readonly BookAddress[],
): BookAddress {
  const group = idLike(groupName, 'group');
  const wished = idLike(seasonName, 'season');
  const taken = new Set(books.filter((book) => book.group === group).map((book) => book.season));
  let season = wished;
  for (let next = 2; taken.has(season); next += 1) season = `${wished}-${next}`;
  return { group, season };
}
