/** A schema is plain JSON; these look into it without believing anything about its shape. */

/** The schema of a list's item; a list of fixed length has one for each place. */
export function itemsOf(node: unknown, index: number): unknown {
  const items = partOf(node, 'items');
  return Array.isArray(items) ? items[index] : items;
}

/** A part of a schema node, which is plain JSON. */
export function partOf(node: unknown, key: string): object | string | undefined {
  if (typeof node !== 'object' || node === null) return undefined;
  const part: unknown = Reflect.get(node, key);
  return typeof part === 'string' || (typeof part === 'object' && part !== null) ? part : undefined;
}

/** A number of a schema node, like its minimum. */
export function numberOf(node: unknown, key: string): number | undefined {
  if (typeof node !== 'object' || node === null) return undefined;
  const found: unknown = Reflect.get(node, key);
  return typeof found === 'number' ? found : undefined;
}
