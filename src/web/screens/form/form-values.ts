import { isDay } from '../../../base/day.ts';
import { freeId } from '../../../intake/short-id.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { tallied } from '../../../questions/denominations.ts';
import { type BookRecord, isMovement, type Kind, movementKinds } from '../../../records/record.ts';
import type { Draft } from '../../book.ts';
import type { FieldError } from '../../parts/notice.tsx';
import {
  type LinesTyped,
  linesToType,
  moneyToType,
  typedLines,
  typedMoney,
  typedWhole,
} from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FieldForm, FieldOf } from './field-form.ts';
import { kindForms } from './kind-forms.ts';
import { readRows, typeRows } from './row-values.ts';

/**
 * Between what is typed into a form and a record. What is typed is a flat map of texts, one a
 * control (`seller`, `lines.honey.cases`, `shifts.0.from`), so that nothing is lost however wrong
 * it is.
 */
export type Typed = Readonly<Record<string, string>>;

export interface FormContext {
  readonly ledger: Ledger;
  readonly currency: string;
}

export type FormKind = Exclude<Kind, 'void'>;

export interface FormReading {
  /** The fields as a record has them; only to be used where there are no errors. */
  readonly values: Readonly<Record<string, unknown>>;
  readonly errors: readonly FieldError[];
}

const DAY: FieldForm = { type: 'day', field: 'date', label: say`Day` };
const NOTE: FieldForm = { type: 'text', field: 'note', label: say`Note`, optional: true };
const LATE: FieldForm = { type: 'text', field: 'late', label: say`Why it is recorded late` };

/** Every field of a kind's form, with those that all kinds share. */
export function fieldsOf(kind: FormKind, ledger: Ledger): FieldForm[] {
  const own = kindForms[kind].fields;
  const moves = movementKinds.some((movement) => movement === kind);
  if (!moves) return [...own, NOTE];
  return [DAY, ...own, NOTE, ...(ledger.setup.season?.closed ? [LATE] : [])];
}

/** Reads a whole form. */
export function readForm(kind: FormKind, typed: Typed, context: FormContext): FormReading {
  const values: Record<string, unknown> = {};
  const errors: FieldError[] = [];
  for (const form of fieldsOf(kind, context.ledger)) {
    const value = readField(form, typed, context, errors);
    if (value === undefined) continue;
    const [field = '', part] = form.field.split('.');
    values[field] = part === undefined ? value : { [part]: value };
  }
  if (kind === 'stall-close') followTally(values, typed, context, errors);
  return { values, errors };
}

/** The draft that a form without errors stands for; new set-up things get an id from their name. */
export function draftOf(
  kind: FormKind,
  values: Readonly<Record<string, unknown>>,
  context: FormContext,
  earlier: BookRecord | undefined,
): Draft {
  const { id: _id, at: _at, by: _by, ...kept } = earlier ?? { kind };
  const known = new Set(fieldsOf(kind, context.ledger).map((form) => form.field.split('.')[0]));
  // What the form does not ask for stays as it was: lots of an older book, fields to come.
  const others = Object.entries(kept).filter(([field]) => !known.has(field));
  const replaces = earlier === undefined ? {} : { replaces: earlier.id };
  const draft = { ...Object.fromEntries(others), ...newId(kind, values, context, earlier) };
  // The table of forms names each kind's own fields, and the server checks them again.
  return { ...draft, kind, ...values, ...replaces } as Draft;
}

/** A record's fields as they would have been typed. */
export function typeRecord(record: BookRecord, context: FormContext): Typed {
  const typed: Record<string, string> = {};
  if (record.kind === 'void') return typed;
  const day = isMovement(record) ? record.date : '';
  for (const form of fieldsOf(record.kind, context.ledger)) {
    const value = valueAt(record, form.field);
    if (value !== undefined) Object.assign(typed, typeField(form, value, context, day));
  }
  return typed;
}

function valueAt(record: BookRecord, path: string): unknown {
  let value: unknown = record;
  for (const part of path.split('.')) value = propertyOf(value, part);
  return value;
}

function propertyOf(value: unknown, key: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.entries(value).find(([name]) => name === key)?.[1];
}

/** One field's value, undefined where it is left out; what does not fit is put on the list. */
function readField(
  form: FieldForm,
  typed: Typed,
  context: FormContext,
  errors: FieldError[],
): unknown {
  const said = (typed[form.field] ?? '').trim();
  const wrong = (words: string): undefined => {
    errors.push({ field: form.field, words: `${form.label}: ${words}` });
  };
  const optional = form.optional === true;
  switch (form.type) {
    case 'money':
    case 'whole': {
      if (said === '') return optional ? undefined : wrong(say`Write a number.`);
      const number = form.type === 'money' ? typedMoney(said, context.currency) : typedWhole(said);
      return number.ok ? number.value : wrong(number.refusal);
    }
    case 'check':
      return readCheck(form, said);
    case 'lines':
      return readLines(form, typed, context, errors);
    case 'texts':
      return said === ''
        ? undefined
        : said
            .split('\n')
            .map((line) => line.trim())
            .filter(Boolean);
    case 'receipts':
      return readTicks(form.field, typed);
    case 'counters':
      return readCounters(form.field, typed, wrong);
    case 'tally':
      return readWholes(form.field, typed, wrong);
    case 'shares':
      return readShares(form.field, typed, wrong);
    case 'rows':
      return readRows(form, typed, context.currency, errors);
    case 'day':
      if (said === '') return optional ? undefined : wrong(say`Choose a day.`);
      return isDay(said) ? said : wrong(say`Choose a day that exists.`);
    case 'text':
      if (said === '') return optional ? undefined : wrong(say`Write something here.`);
      return said;
    default:
      if (said === '') return optional ? undefined : wrong(say`Choose one.`);
      return said;
  }
}

/** The ids that are ticked, in the order of their ticks; undefined where none is. */
function readTicks(field: string, typed: Typed): string[] | undefined {
  const ids = keysUnder(field, typed).filter(([, text]) => text === 'yes');
  return ids.length === 0 ? undefined : ids.map(([id]) => id);
}

/** `no` was said outright by the record that is edited, an empty text is left out. */
function readCheck(form: FieldOf<'check'>, said: string): boolean | undefined {
  if (said === 'yes') return !form.inverse;
  return said === 'no' || form.always ? form.inverse === true : undefined;
}

type Wrong = (words: string) => undefined;

function readLines(
  form: FieldOf<'lines'>,
  typed: Typed,
  { ledger }: FormContext,
  errors: FieldError[],
): unknown {
  const read = typedLines(linesTyped(form.field, typed), ledger, typed.date ?? '', form.zeros);
  if (!read.ok) {
    for (const [product, words] of read.refusal) {
      const name = ledger.setup.products.get(product)?.name ?? product;
      errors.push({ field: `${form.field}.${product}`, words: `${name}: ${words}` });
    }
    return undefined;
  }
  if (Object.keys(read.value).length > 0) return read.value;
  if (form.optional) return form.always ? {} : undefined;
  if (!form.zeros) errors.push({ field: form.field, words: say`${form.label}: Write how many.` });
  return {};
}

/** The cases and singles typed under a field, by product. */
export function linesTyped(field: string, typed: Typed): LinesTyped {
  const lines: Record<string, { cases: string; singles: string }> = {};
  for (const [key, text] of keysUnder(field, typed)) {
    const [product = '', part = ''] = key.split('.');
    const line = lines[product] ?? { cases: '', singles: '' };
    lines[product] = part === 'cases' ? { ...line, cases: text } : { ...line, singles: text };
  }
  return lines;
}

/** A LinesField's value back into the flat map. */
export function flatLines(field: string, lines: LinesTyped): Typed {
  const flat: Record<string, string> = {};
  for (const product in lines) {
    flat[`${field}.${product}.cases`] = lines[product]?.cases ?? '';
    flat[`${field}.${product}.singles`] = lines[product]?.singles ?? '';
  }
  return flat;
}

function keysUnder(field: string, typed: Typed): [key: string, text: string][] {
  return Object.entries(typed)
    .filter(([key]) => key.startsWith(`${field}.`))
    .map(([key, text]) => [key.slice(field.length + 1), text]);
}

function readCounters(field: string, typed: Typed, wrong: Wrong): unknown {
  const names = [0, 1].map((place) => (typed[`${field}.${place}`] ?? '').trim());
  if (names.every((name) => name === '')) return undefined;
  return names.includes('') ? wrong(say`Write both names, or neither.`) : names;
}

function readWholes(field: string, typed: Typed, wrong: Wrong): Record<string, number> | undefined {
  const wholes: Record<string, number> = {};
  for (const [key, text] of keysUnder(field, typed)) {
    if (text.trim() === '') continue;
    const whole = typedWhole(text);
    if (!whole.ok) return wrong(whole.refusal);
    wholes[key] = whole.value;
  }
  return Object.keys(wholes).length === 0 ? undefined : wholes;
}

function readShares(field: string, typed: Typed, wrong: Wrong): unknown {
  const shares: Record<string, Record<string, number>> = {};
  for (const [key, units] of Object.entries(readWholes(field, typed, wrong) ?? {})) {
    const [seller = '', product = ''] = key.split('.');
    if (units > 0) shares[seller] = { ...shares[seller], [product]: units };
  }
  return Object.keys(shares).length === 0 ? wrong(say`Give some units to a seller.`) : shares;
}

/** Cash follows from the notes and coins where they were counted. */
function followTally(
  values: Record<string, unknown>,
  typed: Typed,
  { currency }: FormContext,
  errors: FieldError[],
): void {
  const tally = readWholes('tally', typed, () => undefined);
  if (tally === undefined) return;
  const cash = tallied(tally);
  if ((typed.cash ?? '').trim() === '') {
    values.cash = cash;
    const missing = errors.findIndex((error) => error.field === 'cash');
    if (missing >= 0) errors.splice(missing, 1);
  } else if (values.cash !== cash) {
    const words = say`Cash at the end: the notes and coins are ${say.money(cash, currency)}.`;
    errors.push({ field: 'cash', words });
  }
}

function typeField(form: FieldForm, value: unknown, context: FormContext, day: string): Typed {
  const { field } = form;
  switch (form.type) {
    case 'money':
      return { [field]: typeof value === 'number' ? moneyToType(value, context.currency) : '' };
    case 'lines':
      return flatLines(field, linesToType(wholesIn(value), context.ledger, day));
    case 'check':
      return { [field]: value === !form.inverse ? 'yes' : 'no' };
    case 'texts':
      return { [field]: Array.isArray(value) ? value.join('\n') : '' };
    case 'receipts':
      return Array.isArray(value)
        ? Object.fromEntries(value.map((id) => [`${field}.${id}`, 'yes']))
        : {};
    case 'rows':
      return typeRows(form, value, context.currency);
    case 'counters':
    case 'tally':
    case 'shares':
      return flatten(field, value);
    default:
      return { [field]: String(value) };
  }
}

function wholesIn(value: unknown): Record<string, number> {
  const wholes: Record<string, number> = {};
  for (const [key, whole] of Object.entries(value ?? {})) {
    if (typeof whole === 'number') wholes[key] = whole;
  }
  return wholes;
}

function flatten(path: string, value: unknown): Record<string, string> {
  if (typeof value !== 'object' || value === null) return { [path]: String(value) };
  const parts = Object.entries(value).map(([key, part]) => flatten(`${path}.${key}`, part));
  return Object.assign({}, ...parts);
}

/** The short id of a new thing, made from its name; an edit keeps the one it has. */
function newId(
  kind: FormKind,
  values: Readonly<Record<string, unknown>>,
  { ledger }: FormContext,
  earlier: BookRecord | undefined,
): Record<string, string> {
  const { setup } = ledger;
  const taken: Partial<Record<FormKind, ReadonlyMap<string, unknown>>> = {
    product: setup.products,
    family: setup.families,
    seller: setup.sellers,
    host: setup.hosts,
    neighbour: setup.neighbours,
    stall: setup.stalls,
    level: setup.levels,
  };
  const known = taken[kind];
  if (known === undefined || earlier !== undefined) return {};
  const stallName = `${values.host ?? ''} ${String(values.starts ?? '').slice(0, 10)}`;
  const name = kind === 'stall' ? stallName : String(values.name ?? values.prize ?? kind);
  return { [kind]: freeId(name, kind, new Set(known.keys())) };
}
