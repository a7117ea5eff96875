import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { say } from '../../say.ts';

/** What is left of an item; more products than `namedMax` are only counted. */
export function leftInShort(item: ClosingItem, words: string, namedMax: number): string {
  const products = Object.keys(item.lines ?? {}).length;
  if (products <= namedMax) return words;
  return say.count(
    Object.values(item.left)[0] ?? 0,
  )`# unit of ${products} products|# units of ${products} products`;
}
