import { byText } from './order.ts';

/**
 * Orders names as people look them up: marks on letters and capitals set aside (Unicode NFD), so
 * that Réka stands before Rui. The same on every machine and in every locale; equal names go on by
 * their own text.
 */
export function byName(a: string, b: string): number {
  return byText(bare(a), bare(b)) || byText(a, b);
}

function bare(name: string): string {
  return name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
