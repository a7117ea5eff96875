import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { ErrorAnswer } from '../../../contract/api.ts';
import { type BookRecord, movementKinds } from '../../../records/record.ts';
import { kindName } from '../../../statements/kind-name.ts';
import { useBook } from '../../book.ts';
import { afterPaint } from '../../parts/after-paint.ts';
import { Button } from '../../parts/button.tsx';
import { ClosedNotice, useClosed } from '../../parts/closed-season.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { Effect } from './effect.tsx';
import { FormField } from './form-fields.tsx';
import { draftOf, type FormKind, fieldsOf, readForm, type Typed } from './form-values.ts';
import { kindForms } from './kind-forms.ts';
import { OrderedGoods } from './ordered-goods.tsx';

/**
 * The form of any kind, for a new record and for an edit. What is typed is kept until it is saved;
 * what does not fit is said on top and beside its field, on saving and not before.
 */
export function RecordForm(props: {
  readonly kind: FormKind;
  readonly start: Typed;
  /** The record that an edit stands for. */
  readonly earlier?: BookRecord;
  /** Called with what was saved; gives what the form then begins with. */
  readonly onSaved: (saved: BookRecord, typed: Typed) => Typed;
}) {
  const book = useBook();
  const { kind, earlier } = props;
  const form = useRef<HTMLFormElement>(null);
  const typed = useSignal<Typed>(props.start);
  const attempt = useSignal(0);
  const told = useSignal<readonly FieldError[]>([]);
  const busy = useSignal(false);
  const context = { ledger: book.ledger, currency: book.currency };
  const reading = readForm(kind, typed.value, context);
  const fail = (errors: readonly FieldError[]) => {
    told.value = errors;
    attempt.value += 1;
  };
  const save = async (event: SubmitEvent) => {
    event.preventDefault();
    if (busy.value) return;
    if (reading.errors.length > 0) return fail(reading.errors);
    if (told.value.length > 0) told.value = [];
    busy.value = true;
    await afterPaint();
    const answer = await book.append([draftOf(kind, reading.values, context, earlier)]);
    busy.value = false;
    if (!answer.ok) return fail(toldBy(answer.refusal));
    attempt.value = 0;
    const [saved] = answer.value;
    if (saved !== undefined) typed.value = props.onSaved(saved, typed.value);
    scrollTo(0, 0);
    form.current?.querySelector<HTMLElement>('select, input:not([type=date])')?.focus();
  };
  const onType = (next: Typed) => {
    typed.value = next;
  };
  const fields = fieldsOf(kind, book.ledger);
  const draft = reading.errors.length === 0 && draftOf(kind, reading.values, context, earlier);
  const { care } = kindForms[kind];
  const readOnly = useReadOnly(kind, earlier);
  return (
    <form class="record-form" ref={form} onSubmit={save} noValidate>
      <fieldset class="record-fields" disabled={readOnly} aria-label={kindName(kind, say)}>
        {readOnly && <ClosedNotice />}
        <ErrorSummary errors={told.value} attempt={attempt.value} />
        {fields.map((field) => (
          <FormField
            key={field.field}
            form={field}
            typed={typed.value}
            onType={onType}
            errors={told.value}
          />
        ))}
        {kind === 'handover' && <OrderedGoods typed={typed.value} onType={onType} />}
      </fieldset>
      {!readOnly && (
        <div class="record-effect">
          {care && <p class="care">{care}</p>}
          <div class="form-end">
            <SaveButton busy={busy} isEdit={earlier !== undefined} />
            {earlier !== undefined && (
              <a href={`/records/${earlier.id}`}>{say`Leave it as it was`}</a>
            )}
          </div>
          {/* Below the button: it comes a moment after the typing and must not move it. */}
          <Effect draft={draft || undefined} replaces={earlier} />
        </div>
      )}
    </form>
  );
}

/** By itself, so that a tap on it draws nothing else before it is answered. */
function SaveButton(props: { readonly busy: ReadonlySignal<boolean>; readonly isEdit: boolean }) {
  return (
    <Button kind="main" submit disabled={props.busy.value}>
      {props.isEdit ? say`Save the edit` : say`Save`}
    </Button>
  );
}

/** A closed season takes no set-up and no edit, only new movements that come late. */
function useReadOnly(kind: FormKind, earlier: BookRecord | undefined): boolean {
  const closed = useClosed() !== undefined;
  const moves = movementKinds.some((movement) => movement === kind);
  return closed && (!moves || earlier !== undefined);
}

/** A refusal as errors beside the fields it names. */
function toldBy(refusal: ErrorAnswer): FieldError[] {
  const found = (refusal.findings ?? []).filter((finding) => finding.severity === 'error');
  if (found.length === 0) return [{ field: '', words: say.told(refusal.message) }];
  return found.map(({ field, wanted }) => ({ field, words: say`Wanted: ${say.told(wanted)}.` }));
}

/** What a new form begins with: today, and what the address already says (`?seller=ada`). */
export function startOf(kind: FormKind, today: string, given: Typed): Typed {
  const start: Record<string, string> = { date: today };
  for (const field of kindForms[kind].fields) {
    if (field.type === 'check' && field.ticked) start[field.field] = 'yes';
    if (field.type === 'choice' && field.field === 'tender') start[field.field] = 'cash';
  }
  return { ...start, ...given };
}

/** The day stays for the next one of the same kind, as a pile of slips is of one day. */
export function nextStart(kind: FormKind, today: string, before: Typed): Typed {
  const kept: Record<string, string> = {};
  for (const field of ['date', 'tender']) {
    const text = before[field];
    if (text !== undefined) kept[field] = text;
  }
  return startOf(kind, today, kept);
}
