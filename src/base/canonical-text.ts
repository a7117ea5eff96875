import { byText } from './order.ts';

/**
 * JSON with keys in a fixed order and no white space: two values are the same exactly when these
 * texts are. Order of keys and white space of the original file do not count as content.
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) => (isPlain(part) ? sortKeys(part) : part));
}

function isPlain(part: unknown): part is Record<string, unknown> {
  return typeof part === 'object' && part !== null && !Array.isArray(part);
}

function sortKeys(part: Record<string, unknown>): Record<string, unknown> {
  // A null prototype keeps a key named __proto__ an ordinary key.
  const sorted: Record<string, unknown> = Object.create(null);
  for (const key of Object.keys(part).sort(byText)) sorted[key] = part[key];
  return sorted;
}
