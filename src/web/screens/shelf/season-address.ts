import { idFromName } from '../../../intake/short-id.ts';
import type { BookAddress } from '../../connection.ts';

/** An address that no book has yet, made from a group's and a season's names. */
export function freeAddress(
  groupName: string,
  seasonName: string,
  books: readonly BookAddress[],
): BookAddress {
  const group = idFromName(groupName) || 'group';
  const wished = idFromName(seasonName) || 'season';
  const taken = new Set(books.filter((book) => book.group === group).map((book) => book.season));
  let season = wished;
  for (let next = 2; taken.has(season); next += 1) season = `${wished.slice(0, 58)}-${next}`;
  return { group, season };
}
