import { partOf } from '../schema-node.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import type { Part } from './part.ts';
import type { TapeReader } from './tape.ts';

/** One field of an object with fields of its own: its name as it stands in a line, and its part. */
export interface Field {
  readonly name: string;
  /** `"name":` */
  readonly key: Uint8Array;
  /** One bit of a whole number, another for each field of an object. */
  readonly bit: number;
  readonly part: Part;
}

/** More fields have no bit of their own; no kind has so many. */
const FIELDS_MAX = 31;

const encoder = new TextEncoder();

function keyOf(name: string): Uint8Array {
  return encoder.encode(`${JSON.stringify(name)}:`);
}

/** A field that is known by its name alone. */
export function openField(name: string, parts: ReadonlyMap<string, Part>): Field {
  const part = parts.get(name) ?? { isLeftOut: true, look: () => false, value: () => undefined };
  return { name, key: keyOf(name), bit: 0, part };
}

/** The fields of a schema, and the bits of those that must be there. */
export function fieldsOf(
  schema: unknown,
  partFor: (node: unknown, name: string) => Part,
): { readonly fields: readonly Field[]; readonly required: number } {
  const nodes = Object.entries(partOf(schema, 'properties') ?? {}).slice(0, FIELDS_MAX);
  const fields = nodes.map(([name, node], index) => ({
    name,
    key: keyOf(name),
    bit: 1 << index,
    part: partFor(node, name),
  }));
  let required = 0;
  for (const name of Object.values(partOf(schema, 'required') ?? {})) {
    required |= fields.find((field) => field.name === name)?.bit ?? 1 << FIELDS_MAX;
  }
  return { fields, required };
}

/** Goes past the name of a field, its colon, and spaces. */
export function passField(line: LineBytes, field: Field): void {
  line.at += field.key.length;
  while (line.bytes[line.at] === BYTE.space) line.at += 1;
}

/** An object inside a record, like a shift; each is a new object. */
export class ObjectPart implements Part {
  readonly isLeftOut = false;
  readonly #fields: readonly Field[];
  readonly #required: number;

  constructor(schema: unknown, partFor: (node: unknown) => Part) {
    const { fields, required } = fieldsOf(schema, partFor);
    this.#fields = fields;
    this.#required = required;
  }

  look(line: LineBytes): boolean {
    if (!line.pass(BYTE.start)) return false;
    let seen = 0;
    while (line.bytes[line.at] !== BYTE.end) {
      if (seen !== 0 && !line.pass(BYTE.comma)) return false;
      const index = this.#indexHere(line);
      const field = this.#fields[index];
      if (field === undefined || (seen & field.bit) !== 0) return false;
      seen |= field.bit;
      passField(line, field);
      if (!field.part.isLeftOut) line.tape.put(index);
      if (!field.part.look(line)) return false;
    }
    line.at += 1;
    line.tape.put(-1);
    return (seen & this.#required) === this.#required;
  }

  /** Which field begins here; -1 where none does. */
  #indexHere(line: LineBytes): number {
    for (let at = 0; at < this.#fields.length; at += 1) {
      const field = this.#fields[at];
      if (field !== undefined && line.has(field.key)) return at;
    }
    return -1;
  }

  value(from: TapeReader): Record<string, unknown> {
    const object: Record<string, unknown> = {};
    for (let index = from.next(); index >= 0; index = from.next()) {
      const field = this.#fields[index];
      if (field !== undefined) object[field.name] = field.part.value(from);
    }
    return object;
  }
}
