/** Orders two texts by UTF-16 code units, the same on every machine and in every locale. */
export function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A copy of the entries of a map or object, in the fixed order of their keys. */
export function sortedEntries<V>(
  source: ReadonlyMap<string, V> | Readonly<Record<string, V>>,
): [string, V][] {
  const entries = source instanceof Map ? [...source] : Object.entries(source);
  return entries.sort((a, b) => byText(a[0], b[0]));
}
