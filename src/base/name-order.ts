import { byText } from './order.ts';
import { plainText } from './plain-text.ts';

/**
 * Orders names as people look them up: marks on letters and capitals set aside, so that Réka
 * stands before Rui. The same on every machine and in every locale; names that are then equal go
 * on by their own text.
 */
export function byName(a: string, b: string): number {
  return byText(plainText(a), plainText(b)) || byText(a, b);
}
