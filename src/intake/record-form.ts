import type { TSchema } from 'typebox';
import { Compile, type Validator } from 'typebox/compile';
import { Header } from '../records/header.ts';
import { type BookRecord, isKind, type Kind } from '../records/record.ts';
import { recordSchemas } from '../records/schema.ts';
import { itemsOf, partOf } from './schema-node.ts';

/**
 * What a reader needs of a schema, made ready once: a compiled check, and which fields are known,
 * which of them are free text and where there are fields inside fields.
 */
export interface RecordForm {
  readonly schema: TSchema;
  readonly validator: Validator;
  readonly fields: Fields;
}

export type Fields = ReadonlyMap<string, FieldForm>;

export type FieldForm =
  /** A number, a flag, a fixed word, or text with a pattern of its own: ids, days, times. */
  | { readonly holds: 'plain' }
  /** Text in a person's own words. */
  | { readonly holds: 'text' }
  /** Keys of the group's own, like product ids; the schema says what they may be. */
  | { readonly holds: 'map'; readonly each: FieldForm }
  | { readonly holds: 'list'; readonly each: FieldForm }
  | { readonly holds: 'object'; readonly fields: Fields };

const forms = new Map<string, RecordForm>();

/** The form of a kind; made when it is first asked for, so that starting stays quick. */
export function formOf(kind: Kind): RecordForm {
  return formFor(kind, recordSchemas[kind]);
}

export function headerForm(): RecordForm {
  return formFor('header', Header);
}

function formFor(name: string, schema: TSchema): RecordForm {
  const known = forms.get(name);
  if (known !== undefined) return known;
  const form = { schema, validator: Compile(schema), fields: fieldsOf(schema) };
  forms.set(name, form);
  return form;
}

/** True where a value is a whole record of its kind, apart from what a schema cannot say. */
export function fitsSchema(value: unknown): value is BookRecord {
  if (typeof value !== 'object' || value === null || !('kind' in value)) return false;
  const kind = value.kind;
  return typeof kind === 'string' && isKind(kind) && formOf(kind).validator.Check(value);
}

export function isHeader(value: unknown): value is Header {
  return headerForm().validator.Check(value);
}

function fieldsOf(schema: unknown): Fields {
  const fields = new Map<string, FieldForm>();
  for (const [name, node] of Object.entries(partOf(schema, 'properties') ?? {})) {
    fields.set(name, fieldForm(node));
  }
  return fields;
}

function fieldForm(node: unknown): FieldForm {
  const patterns = Object.values(partOf(node, 'patternProperties') ?? {});
  if (patterns.length > 0) return { holds: 'map', each: fieldForm(patterns[0]) };
  switch (partOf(node, 'type')) {
    case 'string':
      return { holds: partOf(node, 'pattern') === undefined && isFree(node) ? 'text' : 'plain' };
    case 'array':
      return { holds: 'list', each: fieldForm(itemsOf(node, 0)) };
    case 'object':
      return { holds: 'object', fields: fieldsOf(node) };
    default:
      return { holds: 'plain' };
  }
}

function isFree(node: unknown): boolean {
  return partOf(node, 'const') === undefined;
}
