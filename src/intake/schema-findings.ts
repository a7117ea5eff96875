import { type Finding, fieldPath, saidOf } from './finding.ts';
import type { RecordForm } from './record-form.ts';
import { itemsOf, partOf } from './schema-node.ts';

/** Where a record is: its line, and its id where it has a readable one. */
export type Place = Pick<Finding, 'line' | 'record'>;

/** Number literals that do not survive reading, by path: what was really written there. */
export type Written = ReadonlyMap<string, string>;

/**
 * Says in the schema's own words what does not fit: one finding a field, the first that is wrong
 * about it.
 */
export function schemaFindings(
  form: RecordForm,
  value: object,
  place: Place,
  written: Written,
): Finding[] {
  const byField = new Map<string, Finding>();
  const add = (path: readonly string[], said: unknown) => {
    const field = fieldPath(path);
    if (byField.has(field)) return;
    const wanted = wantedAt(form.schema, path);
    byField.set(field, { ...place, field, said, wanted, severity: 'error' });
  };
  for (const error of form.validator.Errors(value)) {
    const path = pathOf(error.instancePath);
    if (error.keyword === 'required') {
      for (const missing of error.params.requiredProperties) add([...path, missing], undefined);
    } else if (error.keyword === 'boolean') {
      // A key that the schema has no room for: the key itself is what was said.
      add(path, saidOf(path.at(-1)));
    } else if (error.keyword !== 'additionalProperties') {
      add(path, written.get(path.join('.')) ?? saidOf(valueAt(value, path)));
    }
  }
  return [...byField.values()];
}

/** The words of the innermost part of the schema on the way to a field. */
function wantedAt(schema: unknown, path: readonly string[]): string {
  let node: unknown = schema;
  let wanted = 'another value';
  for (const part of path) {
    node = nodeAt(node, part);
    if (node === undefined) break;
    wanted = wordsOf(node) ?? wanted;
  }
  return wanted;
}

function nodeAt(node: unknown, part: string): unknown {
  const properties = partOf(node, 'properties');
  if (properties !== undefined) return partOf(properties, part);
  for (const [pattern, inner] of Object.entries(partOf(node, 'patternProperties') ?? {})) {
    return new RegExp(pattern).test(part) ? inner : undefined;
  }
  return itemsOf(node, Number(part));
}

function wordsOf(node: unknown): string | undefined {
  const wanted = partOf(node, 'wanted');
  if (typeof wanted === 'string') return wanted;
  const type = partOf(node, 'type');
  if (type === 'array') return 'a list';
  return type === 'object' ? 'an object with named fields' : undefined;
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  let part = value;
  for (const key of path) {
    if (typeof part !== 'object' || part === null) return undefined;
    part = Reflect.get(part, key);
  }
  return part;
}

/** A JSON Pointer's parts (RFC 6901). */
function pathOf(pointer: string): string[] {
  const parts = pointer.split('/').slice(1);
  return parts.map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
}
