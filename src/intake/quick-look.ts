import { isKind } from '../records/record.ts';
import { recordSchemas } from '../records/schema.ts';
import { holdsCardNumber } from './card-text.ts';
import { itemsOf, numberOf, partOf } from './schema-node.ts';

/**
 * A quick look that says "surely fine" of most records, so that a large book is read about as fast
 * as it is parsed. It never refuses anything: what it is not sure of is read closely, by the schema
 * itself. A test holds that whatever it lets pass fits the schema and has nothing to tell.
 *
 * Its answer is the length that the value has as compact JSON. A line of just that length had no
 * field twice and no number that reading changed, since these only make a line longer.
 */

/** The value's length as compact JSON, NOT_SURE, or NaN where it is fine but of no one length. */
type Look = (value: unknown) => number;

export const NOT_SURE = -1;

/** A number that can be written shorter than by its digits (1e3) makes its record fit no length. */
const MAYBE_SHORTER = Number.NaN;

const looks = new Map<string, Look>();

/** The length of a record as compact JSON, or NOT_SURE. */
export function quickLength(value: unknown): number {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return NOT_SURE;
  const kind = value.kind;
  if (typeof kind !== 'string' || !isKind(kind)) return NOT_SURE;
  let look = looks.get(kind);
  if (look === undefined) {
    look = lookFor(recordSchemas[kind]);
    looks.set(kind, look);
  }
  return look(value);
}

const notSure: Look = () => NOT_SURE;

function lookFor(schema: unknown): Look {
  const fixed = partOf(schema, 'const');
  if (typeof fixed === 'string') return wordLook([fixed]);
  const words = partOf(schema, 'anyOf');
  if (Array.isArray(words)) return wordLook(words.map((word) => partOf(word, 'const')));
  switch (partOf(schema, 'type')) {
    case 'string':
      return partOf(schema, 'pattern') === undefined ? textLook(schema) : patternLook(schema);
    case 'integer':
      return wholeLook(numberOf(schema, 'minimum'), numberOf(schema, 'maximum'));
    case 'boolean':
      return (value) => (value === true ? 4 : value === false ? 5 : NOT_SURE);
    case 'array':
      return listLook(schema);
    case 'object':
      return partOf(schema, 'patternProperties') === undefined
        ? objectLook(schema)
        : mapLook(schema);
    default:
      return notSure;
  }
}

function wordLook(words: readonly unknown[]): Look {
  const known = new Set(words);
  return (value) => (typeof value === 'string' && known.has(value) ? value.length + 2 : NOT_SURE);
}

/** Free text: its bounds are in characters, of which there are at most as many as code units. */
function textLook(schema: unknown): Look {
  const least = numberOf(schema, 'minLength') ?? 0;
  const most = numberOf(schema, 'maxLength') ?? Number.POSITIVE_INFINITY;
  if (least > 1) return notSure;
  return (value) => {
    if (typeof value !== 'string' || value.length < least || value.length > most) return NOT_SURE;
    if (holdsCardNumber(value)) return NOT_SURE;
    return value.includes('\0') || !value.isWellFormed() ? NOT_SURE : value.length + 2;
  };
}

function patternLook(schema: unknown): Look {
  const most = numberOf(schema, 'maxLength') ?? Number.POSITIVE_INFINITY;
  const pattern = new RegExp(String(partOf(schema, 'pattern')), 'u');
  return (value) =>
    typeof value === 'string' && value.length <= most && pattern.test(value)
      ? value.length + 2
      : NOT_SURE;
}

function wholeLook(least = Number.NaN, most = Number.NaN): Look {
  return (value) => {
    if (typeof value !== 'number' || !Number.isInteger(value)) return NOT_SURE;
    return value >= least && value <= most ? lengthOfWhole(value) : NOT_SURE;
  };
}

function lengthOfWhole(value: number): number {
  if (value < 10) return value < 0 ? NOT_SURE : 1;
  if (value < 100) return 2;
  if (value < 1000) return 3;
  if (value % 1000 === 0) return MAYBE_SHORTER;
  if (value < 10_000) return 4;
  if (value < 100_000) return 5;
  return String(value).length;
}

function listLook(schema: unknown): Look {
  const isFixed = Array.isArray(partOf(schema, 'items'));
  if (isFixed) return notSure;
  const each = lookFor(itemsOf(schema, 0));
  return (value) => {
    if (!Array.isArray(value)) return NOT_SURE;
    let length = 2 + Math.max(0, value.length - 1);
    for (const item of value) {
      const inner = each(item);
      if (inner < 0) return NOT_SURE;
      length += inner;
    }
    return length;
  };
}

function mapLook(schema: unknown): Look {
  const [[text, node] = ['^$', undefined]] = Object.entries(
    partOf(schema, 'patternProperties') ?? {},
  );
  const pattern = new RegExp(text, 'u');
  const each = lookFor(node);
  // The keys of a book are few and come again on every line.
  const known = new Set<string>();
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return NOT_SURE;
    let length = 1;
    for (const key in value) {
      if (!known.has(key)) {
        if (!pattern.test(key)) return NOT_SURE;
        if (known.size < KEYS_KEPT) known.add(key);
      }
      const inner = each(Reflect.get(value, key));
      if (inner < 0) return NOT_SURE;
      length += key.length + inner + 4;
    }
    return Math.max(length, 2);
  };
}

const KEYS_KEPT = 10_000;

function objectLook(schema: unknown): Look {
  const fields = new Map<string, { readonly look: Look; readonly required: number }>();
  const required = Object.values(partOf(schema, 'required') ?? {});
  for (const [name, node] of Object.entries(partOf(schema, 'properties') ?? {})) {
    fields.set(name, { look: lookFor(node), required: required.includes(name) ? 1 : 0 });
  }
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return NOT_SURE;
    let length = 1;
    let missing = required.length;
    for (const key in value) {
      const field = fields.get(key);
      if (field === undefined) return NOT_SURE;
      const inner = field.look(Reflect.get(value, key));
      if (inner < 0) return NOT_SURE;
      missing -= field.required;
      length += key.length + inner + 4;
    }
    return missing === 0 ? Math.max(length, 2) : NOT_SURE;
  };
}
