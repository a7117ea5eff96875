import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import './form.css';
import type { Lines } from '../../../records/fields.ts';
import { isKind } from '../../../records/record.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { type Book, useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { linesToType, moneyToType } from '../../parts/typed.ts';
import type { ScreenProps } from '../../routes.ts';
import { type FormKind, fieldsOf, flatLines, type Typed } from './form-values.ts';
import { kindForms } from './kind-forms.ts';
import { nextStart, RecordForm, startOf } from './record-form.tsx';

/** A new record of one kind; after saving the kind stays for the next one. */
export function FormScreen({ params, search }: ScreenProps) {
  const book = useBook();
  const kind = params.kind ?? '';
  if (!isKind(kind) || kind === 'void') {
    return (
      <Page title={say`There is no such form`}>
        <p>{say.pieces`Choose what to record from ${link('/add', say`all forms`)}.`}</p>
      </Page>
    );
  }
  const start = startOf(kind, book.workingDay(), given(kind, search, book));
  return (
    <Page
      title={kindName(kind, say)}
      above={<a href="/add">{say`All that can be recorded`}</a>}
      lead={kindForms[kind].about}
    >
      <RecordForm
        kind={kind}
        start={{ ...receipt(kind, book), ...start }}
        onSaved={(_saved, typed) => ({
          ...receipt(kind, book),
          ...nextStart(kind, book.workingDay(), typed),
        })}
      />
    </Page>
  );
}

/** The number of the next receipt stands in a new payment's form, ready to be written over. */
function receipt(kind: FormKind, book: Book): Typed {
  return kind === 'payment' ? { receipt: book.nextReceipt() } : {};
}

/**
 * What the address says about fields, money in minor units and goods in units:
 * `?seller=ada&cents=1600`, `?date=2027-04-03&lines.honey=3&note=Counted`.
 */
function given(kind: FormKind, search: URLSearchParams, book: Book): Typed {
  const typed: Record<string, string> = {};
  const day = search.get('date') ?? book.workingDay();
  for (const field of fieldsOf(kind, book.ledger)) {
    if (field.type === 'lines') {
      const lines = linesGiven(field.field, search);
      Object.assign(typed, flatLines(field.field, linesToType(lines, book.ledger, day)));
      continue;
    }
    const text = search.get(field.field);
    if (text === null) continue;
    const minor = wholeIn(text);
    const money = field.type === 'money' && minor !== undefined;
    typed[field.field] = money ? moneyToType(minor, book.currency) : text;
  }
  return typed;
}

function linesGiven(field: string, search: URLSearchParams): Lines {
  const lines: Record<string, number> = {};
  for (const [key, text] of search) {
    const units = wholeIn(text);
    if (key.startsWith(`${field}.`) && units) lines[key.slice(field.length + 1)] = units;
  }
  return lines;
}

function wholeIn(text: string): number | undefined {
  return /^\d{1,15}$/.test(text) ? Number(text) : undefined;
}
