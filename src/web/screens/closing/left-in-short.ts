import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { unitsText } from '../../../statements/money-text.ts';

/** What is left of an item; more products than `namedMax` are only counted. */
export function leftInShort(item: ClosingItem, words: string, namedMax: number): string {
  const products = Object.keys(item.lines ?? {}).length;
  if (products <= namedMax) return words;
  return `${unitsText(Object.values(item.left)[0] ?? 0)} units of ${products} products`;
}
