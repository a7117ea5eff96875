import './form.css';
import { nextReceipt } from '../../../questions/next-receipt.ts';
import { isKind } from '../../../records/record.ts';
import { kindNames } from '../../../statements/kind-name.ts';
import { type Book, useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { moneyToType } from '../../parts/typed.ts';
import type { ScreenProps } from '../../routes.ts';
import type { FormKind, Typed } from './form-values.ts';
import { kindForms } from './kind-forms.ts';
import { nextStart, RecordForm, startOf } from './record-form.tsx';

/** A new record of one kind; after saving the kind stays for the next one. */
export function FormScreen({ params, search }: ScreenProps) {
  const book = useBook();
  const kind = params.kind ?? '';
  if (!isKind(kind) || kind === 'void') {
    return (
      <Page title="There is no such form">
        <p>
          Choose what to record from <a href="/add">all forms</a>.
        </p>
      </Page>
    );
  }
  const start = startOf(kind, book.today(), given(kind, search, book));
  return (
    <Page
      title={kindNames[kind]}
      above={<a href="/add">All that can be recorded</a>}
      lead={kindForms[kind].about}
    >
      <RecordForm
        kind={kind}
        start={{ ...receipt(kind, book), ...start }}
        onSaved={(_saved, typed) => ({
          ...receipt(kind, book),
          ...nextStart(kind, book.today(), typed),
        })}
      />
    </Page>
  );
}

/** The number of the next receipt stands in a new payment's form, ready to be written over. */
function receipt(kind: FormKind, book: Book): Typed {
  return kind === 'payment' ? { receipt: nextReceipt(book.ledger) } : {};
}

/**
 * What the address says about fields, amounts of money in minor units: `?seller=ada&cents=1600`.
 */
function given(kind: FormKind, search: URLSearchParams, book: Book): Typed {
  const typed: Record<string, string> = {};
  for (const field of kindForms[kind].fields) {
    const text = search.get(field.field);
    if (text === null) continue;
    const minor = Number(text);
    const money = field.type === 'money' && Number.isSafeInteger(minor) && minor >= 0;
    typed[field.field] = money ? moneyToType(minor, book.currency) : text;
  }
  const date = search.get('date');
  return date === null ? typed : { ...typed, date };
}
