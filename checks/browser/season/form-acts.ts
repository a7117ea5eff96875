import { assert } from '../../../src/base/assert.ts';
import type { Lines } from '../../../src/records/fields.ts';
import type { BookRecord, RecordOf } from '../../../src/records/record.ts';
import { kindName } from '../../../src/statements/kind-name.ts';
import { moneyToType } from '../../../src/web/parts/typed.ts';
import { say } from '../../../src/web/say.ts';
import type { FieldForm, FieldOf } from '../../../src/web/screens/form/field-form.ts';
import { kindForms } from '../../../src/web/screens/form/kind-forms.ts';
import {
  type Act,
  beginning,
  button,
  choose,
  date,
  field,
  group,
  link,
  open,
  page,
  pick,
  save,
  titled,
  write,
} from './act.ts';
import type { Names } from './names.ts';

/** A record of any kind of movement by its form: what the form's table of fields asks for. */

type Movement = Exclude<BookRecord, { readonly kind: 'void' }>;

const VERBS: Partial<Record<BookRecord['kind'], string>> = {
  handover: say`Goods out`,
  return: say`Goods back`,
  payment: say`Payment`,
};

/** @param before the record written before: the form of its kind is still open */
export function formActs(record: Movement, before: BookRecord | undefined, names: Names): Act[] {
  const isOpen = before?.kind === record.kind && before.replaces === undefined;
  const fields = fieldActs(record, names, false);
  return [...(isOpen ? [] : toForm(record)), ...fields, save(say`Save`)];
}

function toForm(record: Movement): Act[] {
  const verb = VERBS[record.kind];
  if (verb !== undefined) return [{ does: 'verb', name: verb }, formIsThere(record)];
  const words = kindName(record.kind, say);
  const inList = link(words, { css: 'main .kinds' });
  return [page(say.as('verb')`Record`), open(beginning(inList)), formIsThere(record)];
}

function formIsThere(record: Movement): Act {
  return titled(kindName(record.kind, say));
}

/** An edit: the record is found, and what its form should say is gone through. */
export function editActs(record: Movement, earlier: Movement, names: Names): Act[] {
  return [
    ...findActs(earlier),
    open(beginning(link(say`Edit`))),
    titled(say`Edit: ${kindName(earlier.kind, say)}`),
    ...fieldActs(record, names, true),
    save(say`Save the edit`),
  ];
}

export function removeActs(record: RecordOf<'void'>, gone: Movement): Act[] {
  const dialog = { role: 'dialog' } as const;
  return [
    ...findActs(gone),
    open({ css: 'main .roll-words a' }),
    titled(kindName(gone.kind, say)),
    open(button(say`Remove`)),
    write(field('why'), record.reason),
    { does: 'save', at: button(say`Remove`, dialog) },
  ];
}

/** The list is down to records with the number on the paper. */
function findActs(record: Movement): Act[] {
  const { slip, receipt } = { slip: undefined, receipt: undefined, ...record };
  const number = String(slip ?? receipt);
  return [
    page(say`Find`),
    write(field('text'), number),
    { does: 'see', at: { css: 'main h2:text-matches("^[12] records?$")' } },
  ];
}

function fieldActs(record: Movement, names: Names, isEdit: boolean): Act[] {
  const said = new Map<string, unknown>(Object.entries(record));
  const own = kindForms[record.kind].fields.flatMap((form): Act[] => {
    const [name = '', part] = form.field.split('.');
    const whole = said.get(name);
    const value = part === undefined ? whole : Object(whole)[part];
    return value === undefined ? [] : oneField(form, value, names, isEdit);
  });
  const day = 'date' in record ? [date(field('date'), record.date)] : [];
  const note = record.note === undefined ? [] : [write(field('note'), record.note)];
  return [...day, ...own, ...note];
}

function oneField(form: FieldForm, value: unknown, names: Names, isEdit: boolean): Act[] {
  const at = field(form.field);
  switch (form.type) {
    case 'seller':
    case 'thing':
      return [choose(at, names.of(String(value)))];
    case 'record':
      return [choose(at, names.paperOf(String(value)))];
    case 'money':
      return [write(at, moneyToType(Number(value), names.currency))];
    case 'choice': {
      const words = form.options.find(([option]) => option === value)?.[1] ?? '';
      return [pick({ role: 'radio', name: words, within: group(form.label) })];
    }
    case 'text':
      return [write(at, String(value))];
    case 'day':
      return [date(at, String(value))];
    case 'check':
      return value === true ? [pick({ role: 'checkbox', name: form.label })] : [];
    case 'lines':
      return linesActs(form, value as Lines, names, isEdit);
    case 'rows':
      return rowsActs(form, value as readonly Record<string, unknown>[], names);
    default:
      assert(false, `a record with ${form.field} (${form.type}) has a page of its own`);
  }
}

function linesActs(form: FieldOf<'lines'>, lines: Lines, names: Names, isEdit: boolean): Act[] {
  const folded = form.optional && !form.always && !isEdit;
  const unfold: Act[] = folded
    ? [open({ css: `summary:text-is("${say`${form.label} (if any)`}")` })]
    : [];
  if (Object.keys(lines).length === 0) return [];
  const within = group(form.label);
  return [...unfold, ...goodsActs(lines, names, (name) => name, within, isEdit)];
}

/** Cases and singles of each product; an edit also empties what is not to stand there. */
export function goodsActs(
  lines: Lines,
  names: Names,
  wordsOf: (product: string) => string,
  within: ReturnType<typeof group>,
  both: boolean,
): Act[] {
  return Object.entries(lines).flatMap(([product, units]) => {
    const size = names.caseOf(product);
    const cases = size > 1 ? Math.floor(units / size) : 0;
    const singles = units - cases * size;
    const name = wordsOf(names.of(product));
    const cell = (words: string) => ({ role: 'textbox' as const, name: words, within });
    const parts: Act[] = [];
    if (size > 1 && (cases > 0 || both)) {
      parts.push(write(cell(say`${name}, cases of ${size}`), cases === 0 ? '' : String(cases)));
    }
    if (singles > 0 || both) {
      parts.push(write(cell(say`${name}, singles`), singles === 0 ? '' : String(singles)));
    }
    return parts;
  });
}

function rowsActs(
  form: FieldOf<'rows'>,
  rows: readonly Readonly<Record<string, unknown>>[],
  names: Names,
): Act[] {
  return rows.flatMap((row, at) => [
    open(button(say`Add a row`, group(form.label))),
    ...form.columns.flatMap((column): Act[] => {
      const value = row[column.field];
      if (value === undefined) return [];
      const cell = field(`${form.field}.${at}.${column.field}`);
      if (column.as === 'product' || column.as === 'seller') {
        return [choose(cell, names.of(String(value)))];
      }
      if (column.as === 'day') return [date(cell, String(value))];
      return [write(cell, String(value))];
    }),
  ]);
}
